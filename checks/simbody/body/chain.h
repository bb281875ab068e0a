// Builds a limb as a chain of Simbody bodies.
//
// Every body frame lies on the ground frame in the anatomical position.
#pragma once

#include <Simbody.h>

#include "limb.h"

inline SimTK::Vec3 vec(const Triple& t) { return {t[0], t[1], t[2]}; }

// Part is one segment: the bodies of its hinges, of which all but the last are
// massless, or one weld.
struct Part {
    SimTK::Vec3 joint, com;
    std::vector<SimTK::MobilizedBodyIndex> hinges;
    SimTK::MobilizedBodyIndex body;
};

struct Chain {
    Chain(SimTK::SimbodyMatterSubsystem& matter, SimTK::MobilizedBodyIndex root, const std::vector<SegmentSpec>& segments);
    std::vector<Part> parts;
};
