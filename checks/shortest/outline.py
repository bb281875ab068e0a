"""Convex outlines as polygons, and the corners a tight string touches."""

import numpy as np
from scipy.spatial import ConvexHull

# Corners given to a curved outline. The chord error of a corner is then below
# r (2 pi / CORNERS)^2 / 8 = 5e-12 r.
CORNERS = 1 << 20

# Every how many corners an outline is looked at before the search narrows.
COARSE = 1 << 10


class Outline:
    """A convex polygon, counter-clockwise, in the frame of its link."""

    def __init__(self, points):
        self.x, self.y = np.asarray(points, float).T
        self.n = len(self.x)
        dx, dy = np.diff(self.x, append=self.x[0]), np.diff(self.y, append=self.y[0])
        passed = np.cumsum(np.hypot(dx, dy))
        self.perimeter = passed[-1]
        self.passed = np.concatenate(([0.0], passed[:-1]))  # m, from corner 0
        self.look = np.arange(0, self.n, max(1, self.n // COARSE))
        self.edges = np.stack((self.x, self.y, dx, dy))[:, self.look]

    def corner(self, i):
        return self.x.item(i), self.y.item(i)

    def outside(self, i, p):
        """Whether p lies outside the edge that starts at corner i."""
        j, x, y = (i + 1) % self.n, self.x.item(i), self.y.item(i)
        return (self.x.item(j) - x) * (p[1] - y) < (self.y.item(j) - y) * (p[0] - x)

    def touched(self, p, last):
        """The corner where a string tight to p touches: the last corner of the
        edges that p sees, counter-clockwise, or else the first."""
        x, y, ex, ey = self.edges
        seen = ex * (p[1] - y) < ey * (p[0] - x)
        if not seen.any() or seen.all():
            raise ValueError("a rope passes through what it should run round")
        if not last:
            k = np.flatnonzero(seen & ~np.roll(seen, 1))[0]
        else:
            k = np.flatnonzero(~seen & np.roll(seen, 1))[0]
        lo, hi = int(self.look[k - 1]) - (self.n if k == 0 else 0), int(self.look[k])
        while hi - lo > 1:  # the edge at lo is not yet as the edge at hi
            mid = (lo + hi) // 2
            if self.outside(mid % self.n, p) == seen[k]:
                hi = mid
            else:
                lo = mid
        return hi % self.n

    def nearest(self, p):
        return int(np.argmin((self.x - p[0]) ** 2 + (self.y - p[1]) ** 2))


def read(o):
    """The outline of a case's document."""
    if o.get("trace"):
        points = np.asarray(o["trace"]) + np.asarray(o["at"])
        return Outline(points[ConvexHull(points).vertices])  # counter-clockwise in the plane
    e = o.get("ellipse") or {"center": (0.0, 0.0), "along": o["radius"], "across": o["radius"], "turned": 0.0}
    t = np.arange(CORNERS) * (2 * np.pi / CORNERS)
    x, y = e["along"] * np.cos(t), e["across"] * np.sin(t)
    c, s = np.cos(e["turned"]), np.sin(e["turned"])
    cx, cy = np.add(o["at"], e["center"])
    return Outline(np.stack((cx + c * x - s * y, cy + s * x + c * y), axis=1))
