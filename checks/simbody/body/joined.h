// A machine and the arm that holds its handle, as one system.
#pragma once

#include "../machine.h"
#include "chain.h"

// JoinedAnswer is one instant: how far grip and handle are apart (m) and how
// fast they part (m/s), what the handle does to the hand (N, ground frame), how
// machine and arm speed up under the joint moments (by coordinate, in its own
// unit), and the greatest of these accelerations without the moments.
struct JoinedAnswer {
    double gap, slip, driver, loose;
    std::vector<double> hinges;
    SimTK::Vec3 force;
};

class Joined {
  public:
    Joined(const Case& c, const Hold& h);
    JoinedAnswer solve(const Instant& i);

  private:
    Machine m;
    SimTK::MobilizedBodyIndex root;
    std::unique_ptr<Chain> chain;
    std::unique_ptr<SimTK::Constraint::Ball> grip;
    std::vector<SimTK::MobilizedBodyIndex> hinges;
    // The machine alone, locked in its driver at a position and at unit rate;
    // and both together, with the trunk locked.
    SimTK::State placing, moving, whole;

    void place(double q);
    void move(double rate);
    void lay(const Instant& i);
    SimTK::Vec3 onHand() const;
};
