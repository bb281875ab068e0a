// Sweeps a machine through its driver positions.
#pragma once

#include "machine.h"

// Reaction is force and moment of link a on link b at the joint's point on b,
// ground frame, N and N·m.
struct Reaction {
    SimTK::Vec3 force{0};
    double moment = 0;
};

// Position is all that is asked of the engine at one driver coordinate.
struct Position {
    double at;
    std::vector<SimTK::Transform> poses;  // by link, motion since measured
    std::vector<double> rates;            // by link, turning per unit driver rate
    std::vector<SimTK::Vec3> loads;       // by weight, velocity per unit driver rate
    SimTK::Vec3 velocity{0};              // of the contact per unit driver rate
    SimTK::Vec3 acceleration{0};          // of the contact at unit driver rate
    double mass;                          // effective, at the driver: kg m² or kg
    double massSlope = 0;                 // its growth with the driver coordinate
    double drive;                         // holding it in the driver joint, N·m or N
    SimTK::Vec3 hold{0};                  // holding it at the contact instead, N
    double left = 0;                      // still in the driver joint then
    std::vector<Reaction> reactions;      // by joint; with hold if there is a contact
};

// Sweep keeps the machine in two states because a lock is costly to change:
// one stands still at a driver position, the other moves at unit rate.
class Sweep {
  public:
    explicit Sweep(const Case& c);
    Position position(double q);

  private:
    Machine m;
    std::optional<Hand> contact;
    std::vector<Weight> weights;
    bool slope;
    SimTK::State still, moving;

    void place(double q);
    void move(Position& p);
    void quicken(Position& p);
    void holdAtContact(Position& p);
    double drive(SimTK::State& s);
    Reaction reaction(const Joint& j);
    SimTK::Vec3 loopForce(const Joint& j) const;
};
