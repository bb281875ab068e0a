"""Least-effort directions of a hand or foot force, by SciPy.

Reads problems on standard input and writes answers on standard output; both
formats are in ../body_effort.go. Efforts are linear in the force across the
path, so the least greatest effort is a linear programme in (x, z), x over the
force along the path. Of the x that are as good to a given share the shortest is
found by the distance programme of Lawson & Hanson, Solving Least Squares
Problems (1974), ch. 23: min |x|, Gx >= h.
"""

import json
import sys

import numpy as np
from scipy.optimize import linprog, nnls


def planes(p):
    """Rows a, b with a.x + b the effort of one joint one way."""
    f = p["force"]
    a, b = [], []
    for j in p["joints"]:
        for sign, can in zip((1, -1), j["available"]):
            if can > 0:
                a.append([sign * f * g / can for g in j["across"]])
                b.append(sign * (j["base"] + f * j["along"]) / can)
    return np.array(a), np.array(b)


def least(a, b, bound):
    rows = np.column_stack([a, -np.ones(len(b))])
    r = linprog([0, 0, 1], A_ub=rows, b_ub=-b, bounds=[(-bound, bound)] * 2 + [(None, None)], method="highs")
    if r.status != 0:
        raise ValueError(r.message)
    return r.x[:2], r.x[2]


def shortest(a, b, bound, z):
    g = np.vstack([-a, np.eye(2), -np.eye(2)])
    h = np.concatenate([b - z, -bound * np.ones(4)])
    e = np.vstack([g.T, h])
    u, _ = nnls(e, np.array([0, 0, 1.0]), maxiter=1000)
    r = e @ u - [0, 0, 1]
    return -r[:2] / r[2]


def answer(p):
    a, b = planes(p)
    _, z = least(a, b, p["bound"])
    x = shortest(a, b, p["bound"], z * (1 + p["alike"]) + p["alike"])
    return {"effort": z, "across": list(x * p["force"]), "reached": float(np.max(a @ x + b))}


json.dump([answer(p) for p in json.load(sys.stdin)], sys.stdout)
