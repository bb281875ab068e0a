// Inverse dynamics of a limb whose motion is given.
#pragma once

#include "chain.h"

// Answer is one segment of one motion, ground frame: what its inner neighbour
// does to it at its proximal joint, and how it moves.
struct Answer {
    SimTK::Vec3 joint, com, omega, alpha;
    SimTK::Vec3 force, moment;
    std::vector<double> hinges;  // generalized force of each, N·m
};

class Inverse {
  public:
    explicit Inverse(const Limb& l);
    std::vector<Answer> solve(const MotionSpec& m);

  private:
    SimTK::MultibodySystem system;
    SimTK::SimbodyMatterSubsystem matter{system};
    SimTK::GeneralForceSubsystem forces{system};
    SimTK::Force::DiscreteForces hand{forces, matter};
    SimTK::MobilizedBodyIndex root;
    std::unique_ptr<Chain> chain;
    SimTK::State state;

    void move(const MotionSpec& m);
};
