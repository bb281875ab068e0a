"""Least-effort directions of a hand or foot force, by SciPy.

Reads problems on standard input and writes answers on standard output; both
formats are in ../body_effort.go. Efforts are linear in the force across the
path, so the least of the greatest effort and a price on the square of a lean is
a convex quadratic programme in (x, z), x over the force along the path. It is
solved by sequential least squares (SLSQP), which finds what binds, and then the
linear equations of what binds, for the last digits.
"""

import json
import sys

import numpy as np
from scipy.optimize import minimize


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


def least(a, b, bound, price):
    """The (x, z) that makes z + k x.x least with a.x + b <= z, |x| <= bound."""
    k = price * np.max(b) / bound**2
    box = np.vstack([np.eye(2), -np.eye(2)])
    rows = np.vstack([np.column_stack([a, -np.ones(len(b))]), np.column_stack([box, np.zeros(4)])])
    ends = np.concatenate([-b, np.full(4, bound)])
    best = None
    for start in ((0, 0), (bound / 2, bound / 2), (-bound / 2, bound / 2)):
        r = minimize(
            lambda v: v[2] + k * (v[0] ** 2 + v[1] ** 2), (*start, np.max(a @ start + b)),
            jac=lambda v: np.array([2 * k * v[0], 2 * k * v[1], 1]), method="SLSQP",
            constraints={"type": "ineq", "fun": lambda v: ends - rows @ v, "jac": lambda v: -rows},
            options={"ftol": 1e-15, "maxiter": 500},
        )
        if best is None or r.fun < best.fun:
            best = r
    return polished(best.x, rows, ends, k)


def polished(v, rows, ends, k):
    """Solves the stationary point on what binds at v, to rounding."""
    binds = ends - rows @ v < 1e-6
    g, e = rows[binds], ends[binds]
    n = len(e)
    kkt = np.block([[np.diag([2 * k, 2 * k, 0]), g.T], [g, np.zeros((n, n))]])
    w = np.linalg.lstsq(kkt, np.concatenate([[0, 0, -1], e]), rcond=None)[0][:3]
    if np.max(np.abs(w - v)) > 1e-3 or np.max(rows @ w - ends) > 1e-9:
        raise ValueError(f"{w} is not near {v}")
    return w


def answer(p):
    a, b = planes(p)
    x = least(a, b, p["bound"], p["price"])[:2]
    return {"across": list(x * p["force"]), "reached": float(np.max(a @ x + b))}


json.dump([answer(p) for p in json.load(sys.stdin)], sys.stdout)
