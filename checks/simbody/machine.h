// Builds a Simbody system from a neutral case.
//
// Every body frame lies on the ground frame in the measured pose, so a body's
// transform at any later pose is that link's motion since it was measured.
#pragma once

#include <Simbody.h>

#include "case.h"

// Joint is where two links meet; its coordinate is that of b relative to a.
// A joint of the tree is a mobilizer, any other a pair of plane constraints.
struct Joint {
    int a, b;
    SimTK::Vec3 at;  // ground frame, measured pose
    bool inTree = false;
    SimTK::MobilizedBodyIndex child;
    std::vector<SimTK::ConstraintIndex> planes;
};

struct Machine {
    explicit Machine(const Case& c);

    SimTK::MultibodySystem system;
    SimTK::SimbodyMatterSubsystem matter{system};
    SimTK::GeneralForceSubsystem forces{system};
    SimTK::Force::DiscreteForces hand{forces, matter};

    std::vector<SimTK::MobilizedBodyIndex> links;  // by link; 0 is ground
    std::vector<Joint> joints;
    int driver;

    SimTK::MobilizedBody& link(int i) { return matter.updMobilizedBody(links[i]); }
    SimTK::MobilizedBody& mover() { return matter.updMobilizedBody(joints[driver].child); }

  private:
    void chooseTree(const Case& c);
    void growTree(const Case& c);
    void addMobilizer(Joint& j, const JointSpec& s, int parent, const Link& body);
    void closeLoop(Joint& j);
    void addLoads(const Case& c);
};

inline SimTK::Vec3 point(const Pair& p) { return {p[0], p[1], 0}; }
