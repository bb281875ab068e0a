"""Levers and sleds on the ground, tied by ropes of fixed length.

Everything is read from lengths and heights alone: the links' places from the
lengths of the ropes, the holding force from the growth of potential energy.
"""

import math

from scipy.optimize import newton

import laws
from rope import Rope

# Derivatives are taken over five points, rad or m apart: error H^4/30 of the
# fifth derivative. Where a rope runs over the corners of a traced plate its
# second derivative jumps, and only closer points help.
STENCIL = ((-2, 1 / 12), (-1, -8 / 12), (1, 8 / 12), (2, -1 / 12))
H = 2e-3
H_CORNERS = 2e-6
FEW_CORNERS = 1000

# Longest step of the driver, rad or m.
STRIDE = 0.02

# What a rope may be off its length, m: a few roundings of its pieces' sum.
KEPT = 1e-14


class Pose:
    """A turn about the ground's origin, then a shift."""

    def __init__(self, turn=0.0, shift=(0.0, 0.0)):
        self.turn, self.shift = turn, shift
        self.c, self.s = math.cos(turn), math.sin(turn)

    def point(self, p):
        return (self.c * p[0] - self.s * p[1] + self.shift[0], self.s * p[0] + self.c * p[1] + self.shift[1])

    def back(self, p):
        x, y = p[0] - self.shift[0], p[1] - self.shift[1]
        return (self.c * x + self.s * y, self.c * y - self.s * x)


class Machine:
    def __init__(self, case):
        self.case = case
        self.joints = {}  # by link
        for j in case["joints"]:
            if j["a"] != 0 or j["b"] in self.joints:
                raise ValueError("only links jointed once, to the ground")
            self.joints[j["b"]] = j
        if case.get("springs"):
            raise ValueError("springs between two points: not supported")
        self.driven = case["joints"][case["driver"]]["b"]
        self.ropes = [Rope(r) for r in case.get("ropes", [])]
        self.elements = [(e, Rope(e["route"]) if e.get("route") else None) for e in case.get("elements", [])]
        self.at = {link: 0.0 for link in self.joints}  # coordinates as last found
        poses = self._poses(self.at)
        self.whole = [r.length(poses) for r in self.ropes]
        self.tied = self._tie()
        few = any(o.n < FEW_CORNERS for r in self.ropes for _, o, _ in r.over)
        self.h = H_CORNERS if few else H

    def _tie(self):
        """Which link each kept rope moves: the first on its way that no earlier
        rope nor the driver does."""
        known, tied = {0, self.driven}, []
        for r in self.ropes:
            if not r.keep:
                tied.append(None)
                continue
            links = [self_end["link"] for self_end in r.ends] + [link for link, _, _ in r.over]
            loose = sorted(set(links) - known)
            if len(loose) != 1:
                raise ValueError("a kept rope must tie one more link")
            known.add(loose[0])
            tied.append(loose[0])
        return tied

    def _poses(self, at):
        return {0: Pose(), **{link: self._pose(j, at[link]) for link, j in self.joints.items()}}

    @staticmethod
    def _pose(j, x):
        if j["kind"] == "slide":
            l = math.hypot(*j["axis"])
            return Pose(0.0, (x * j["axis"][0] / l, x * j["axis"][1] / l))
        px, py = j["at"]
        turned = Pose(x).point((px, py))
        return Pose(x, (px - turned[0], py - turned[1]))

    def find(self, q, longer=0.0):
        """Coordinates of all links at driver q, with the last kept rope longer
        than measured by so much."""
        at = dict(self.at)
        at[self.driven] = q
        kept = [i for i, link in enumerate(self.tied) if link is not None]
        for i in kept:
            want = self.whole[i] + (longer if i == kept[-1] else 0.0)
            at[self.tied[i]] = self._solve(i, at, want)
        return at

    def _solve(self, i, at, want):
        rope, link, x0 = self.ropes[i], self.tied[i], at[self.tied[i]]

        def excess(x):
            return rope.length(self._poses({**at, link: x})) - want

        # Secants: the length grows almost evenly with the link's way. They end
        # where rounding leaves no slope to follow.
        x, _ = newton(excess, x0, x1=x0 + 1e-5, tol=1e-15, full_output=True, disp=False)
        if abs(excess(x)) > KEPT:
            raise ValueError(f"rope {i} cannot keep its length")
        return x

    def energy(self, at):
        """Potential energy in J."""
        poses, c = self._poses(at), self.case
        loads = [(w["link"], w["at"], w["mass"]) for w in c.get("weights", [])]
        loads += [(i, l["com"], l["mass"]) for i, l in enumerate(c["links"]) if i]
        height = sum(m * poses[link].point(p)[1] for link, p, m in loads)
        for chain in c.get("chains", []):
            y, off = self._lifted(chain, poses)
            height += chain["density"] * off * (y - off / 2 - chain["floor"])
        return c["gravity"] * height + sum(self._stored(e, route, at, poses) for e, route in self.elements)

    @staticmethod
    def _lifted(chain, poses):
        """Height of the chain's upper end, and how much is off the floor."""
        y = poses[chain["link"]].point(chain["at"])[1]
        return y, min(max(y - chain["floor"], 0.0), chain["length"])

    def _stored(self, e, route, at, poses):
        if route:
            return laws.energy(e["law"], route.length(poses))
        return laws.energy(e["law"], at[self.case["joints"][e["joint"]]["b"]])

    def inertia(self, poses, rates):
        """Effective mass at the driver, with the links' rates per unit of it."""
        c, total = self.case, 0.0
        for link, j in self.joints.items():
            l = c["links"][link]
            weights = [w for w in c.get("weights", []) if w["link"] == link]
            loads = [(l["com"], l["mass"])] + [(w["at"], w["mass"]) for w in weights]
            turned = sum(w.get("inertia", 0.0) for w in weights)
            if j["kind"] == "slide":
                total += rates[link] ** 2 * sum(m for _, m in loads)
            else:
                total += rates[link] ** 2 * (l["inertia"] + turned + sum(m * math.dist(p, j["at"]) ** 2 for p, m in loads))
        for chain in c.get("chains", []):
            rise = self._velocity(poses, rates, chain["link"], chain["at"])[1]
            total += chain["density"] * self._lifted(chain, poses)[1] * rise**2
        return total

    def follow(self, q):
        """Go to driver q in strides, so that the search stays on its branch."""
        start = self.at[self.driven]
        steps = max(1, math.ceil(abs(q - start) / STRIDE))
        for i in range(1, steps + 1):
            self.at = self.find(start + (q - start) * i / steps)

    def position(self, q):
        self.follow(q)
        beside = [(self.find(q + k * self.h), w / self.h) for k, w in STENCIL]
        rates = {link: sum(w * at[link] for at, w in beside) for link in self.joints}
        poses = self._poses(self.at)
        lengths = [(r, [(r.length(self._poses(at)), w) for at, w in beside]) for r in self.ropes]
        drive = sum(w * self.energy(at) for at, w in beside)
        velocity, hold = self._contact(poses, rates, drive)
        return {
            "at": q,
            "poses": [{"turn": poses[i].turn, "shift": poses[i].shift} for i in sorted(poses)],
            "velocity": velocity,
            "loads": [self._velocity(poses, rates, w["link"], w["at"]) for w in self.case.get("weights", [])],
            "mass": self.inertia(poses, rates),
            "drive": drive,
            "hold": hold,
            "ropes": [
                {"length": r.length(poses), "rate": sum(w * l for l, w in near), "tension": self._tension(q, i)}
                for i, (r, near) in enumerate(lengths)
            ],
        }

    def _tension(self, q, i):
        """Pull of the last kept rope: the energy it would give up lengthening."""
        kept = [k for k, link in enumerate(self.tied) if link is not None]
        if not kept or i != kept[-1]:
            return 0.0
        return -sum(w / self.h * self.energy(self.find(q, k * self.h)) for k, w in STENCIL)

    def _contact(self, poses, rates, drive):
        c = self.case.get("contact")
        if not c:
            return (0.0, 0.0), (0.0, 0.0)
        v = self._velocity(poses, rates, c["link"], c["at"])
        k = drive / (v[0] * v[0] + v[1] * v[1])
        return v, (v[0] * k, v[1] * k)

    def _velocity(self, poses, rates, link, at):
        j, rate = self.joints[link], rates[link]
        if j["kind"] == "slide":
            l = math.hypot(*j["axis"])
            return (rate * j["axis"][0] / l, rate * j["axis"][1] / l)
        p = poses[link].point(at)
        return (-rate * (p[1] - j["at"][1]), rate * (p[0] - j["at"][0]))
