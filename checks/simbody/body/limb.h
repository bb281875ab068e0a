// A limb as plain values. The format is described in ../../body.go.
//
// Reading it stands apart from the engine; see ../case.h.
#pragma once

#include <array>
#include <istream>
#include <vector>

using Triple = std::array<double, 3>;

struct SegmentSpec {
    Triple joint;
    std::vector<Triple> axes;
    double mass;
    Triple com, inertia;
};

struct Load {
    int segment;
    Triple at, force, moment;
};

struct MotionSpec {
    std::array<Triple, 3> root;
    std::vector<double> angles, rates, accelerations;
    Load load;
};

struct Limb {
    double gravity;
    std::vector<SegmentSpec> segments;
    std::vector<MotionSpec> motions;
};

Limb readLimb(std::istream& in);
