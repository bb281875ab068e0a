// A limb as plain values. The format is described in ../../body.go.
//
// Reading it stands apart from the engine; see ../case.h.
#pragma once

#include <array>
#include <istream>
#include <string>
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

// Instant is the machine's driver and the arm's hinges at one instant. The
// moments are those in the arm's own hinges; the trunk's are locked.
struct Instant {
    double at, rate;
    std::vector<double> angles, rates, moments;
};

// Hold is a trunk and arm that hold a machine's handle. The machine is a text
// for readCase.
struct Hold {
    std::string machine;
    std::vector<SegmentSpec> segments;
    Triple root, grip, handle;
    int trunk;  // hinges of it
    std::vector<Instant> instants;
};

Hold readHold(std::istream& in);
