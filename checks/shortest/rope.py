"""A rope as the shortest string that goes round its outlines as told.

Round convex polygons that string is straight between corners, and where it
leaves an outline for a point, all corners lie on one side of it. Nothing here
knows of normals, tangents of curves or support functions.
"""

import math

import outline

# A string between two outlines is pulled tight end by end; each pull brings it
# closer by about (r/d)^2, so far fewer are needed.
PULLS = 500


class Rope:
    def __init__(self, doc):
        self.ends = doc["ends"]
        self.over = [(o["link"], outline.read(o), o["turn"] == "ccw") for o in doc["over"]]
        self.keep = doc.get("keep", False)
        self.wrapped = [None] * len(self.over)  # m, as last measured
        self.anchors = [
            outline_.nearest(end["at"]) if end.get("wound") else None
            for end, (_, outline_, _) in zip(self.ends, (self.over[0], self.over[-1]))
        ] if self.over else [None, None]

    def length(self, poses):
        """The length in m with the links at their poses."""
        n = len(self.over)
        if n == 0:
            return math.dist(*(poses[e["link"]].point(e["at"]) for e in self.ends))

        arrive, leave = [None] * n, [None] * n
        straight = 0.0
        for k in (0, 1):
            if self.anchors[k] is None:
                p = poses[self.ends[k]["link"]].point(self.ends[k]["at"])
                i = self._touch(poses, -k, p, arriving=k == 0)
                straight += math.dist(p, self._place(poses, -k, i))
            else:
                i = self.anchors[k]
            (arrive if k == 0 else leave)[-k] = i
        for k in range(n - 1):
            leave[k], arrive[k + 1] = self._between(poses, k)
            straight += math.dist(self._place(poses, k, leave[k]), self._place(poses, k + 1, arrive[k + 1]))
        return straight + sum(self._wrap(k, arrive[k], leave[k]) for k in range(n))

    def _place(self, poses, k, i):
        link, o, _ = self.over[k]
        return poses[link].point(o.corner(i))

    def _touch(self, poses, k, p, arriving):
        """The corner of outline k where the rope from or to p touches it."""
        link, o, ccw = self.over[k]
        return o.touched(poses[link].back(p), last=arriving == ccw)

    def _between(self, poses, k):
        """The corners where the rope leaves outline k and arrives at the next."""
        i = j = None
        p = self._place(poses, k, 0)
        for _ in range(PULLS):
            before = (i, j)
            j = self._touch(poses, k + 1, p, arriving=True)
            i = self._touch(poses, k, self._place(poses, k + 1, j), arriving=False)
            if (i, j) == before:
                return i, j
            p = self._place(poses, k, i)
        raise ValueError("a rope between two outlines does not come tight")

    def _wrap(self, k, i, j):
        """The length on outline k from corner i to corner j, counting turns
        from one call to the next."""
        _, o, ccw = self.over[k]
        way = (o.passed[j] - o.passed[i]) * (1 if ccw else -1)
        last = self.wrapped[k]
        way += o.perimeter * (math.ceil(-way / o.perimeter) if last is None else round((last - way) / o.perimeter))
        self.wrapped[k] = way
        return way
