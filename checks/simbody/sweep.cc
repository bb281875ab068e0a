#include "sweep.h"

using namespace SimTK;

// closed is the constraint error still taken as met, in m and m/s: a few
// hundred roundings of links near 1 m.
const double closed = 1e-13;

// stride is the longest driver step taken between two projections on the way
// to a position, in rad or m.
const double stride = 0.05;

Sweep::Sweep(const Case& c) : m(c), contact(c.contact), weights(c.weights), slope(c.slope) {
    still = m.system.realizeTopology();
    m.system.realizeModel(still);
    moving = still;
    m.mover().lockAt(moving, 1.0, Motion::Velocity);
}

Position Sweep::position(double q) {
    Position p;
    p.at = q;
    place(q);
    for (const MobilizedBodyIndex i : m.links) p.poses.push_back(m.matter.getMobilizedBody(i).getBodyTransform(still));
    move(p);

    m.hand.clearAllForces(still);
    p.drive = drive(still);
    if (slope) quicken(p);
    if (contact) holdAtContact(p);
    for (const Joint& j : m.joints) p.reactions.push_back(reaction(j));
    return p;
}

// place follows the machine from where it stands to driver coordinate q.
void Sweep::place(double q) {
    const double from = m.mover().getOneQ(still, 0);
    const int steps = std::max(1, int(std::ceil(std::abs(q - from) / stride)));
    for (int i = 1; i <= steps; i++) {
        m.mover().lockAt(still, from + (q - from) * i / steps);
        m.system.realize(still, Stage::Instance);
        m.system.projectQ(still, closed);
    }
}

// move fills in what moves with unit driver rate.
void Sweep::move(Position& p) {
    moving.setQ(still.getQ());
    m.system.realize(moving, Stage::Position);
    m.system.projectU(moving, closed);
    m.system.realize(moving, Stage::Velocity);
    p.mass = 2 * m.system.calcKineticEnergy(moving);
    for (const MobilizedBodyIndex i : m.links)
        p.rates.push_back(m.matter.getMobilizedBody(i).getBodyAngularVelocity(moving)[2]);
    for (const Weight& w : weights) p.loads.push_back(m.link(w.link).findStationVelocityInGround(moving, point(w.at)));
    if (contact) p.velocity = m.link(contact->link).findStationVelocityInGround(moving, point(contact->at));
}

// holdAtContact takes the load off the driver joint: the same virtual work is
// done by a force at the contact.
void Sweep::holdAtContact(Position& p) {
    p.hold = p.velocity * (p.drive / p.velocity.normSqr());
    m.hand.addForceToBodyPoint(still, m.link(contact->link), point(contact->at), p.hold);
    p.left = drive(still);
}

// quicken fills in what changes as the machine moves. At a steady driver rate
// of one the kinetic energy M/2 still grows by M'/2 a second, and the driver
// joint must supply it.
void Sweep::quicken(Position& p) {
    p.massSlope = 2 * (drive(moving) - p.drive);
    if (contact) p.acceleration = m.link(contact->link).findStationAccelerationInGround(moving, point(contact->at));
}

// drive returns the generalized force in the driver joint that keeps the
// machine at rest, or at its steady rate.
double Sweep::drive(State& s) {
    m.system.realize(s, Stage::Acceleration);
    Vector motion;
    m.matter.findMotionForces(s, motion);
    return -m.mover().getOneFromUPartition(s, 0, motion);
}

Reaction Sweep::reaction(const Joint& j) {
    if (!j.inTree) return {loopForce(j), 0};

    // The engine reports at the joint's point on the child, which in a slide
    // is not the point on b.
    const MobilizedBody& child = m.matter.getMobilizedBody(j.child);
    const MobilizedBody& b = m.link(j.b);
    const double sign = j.child == m.links[j.b] ? 1 : -1;
    const SpatialVec onChild = child.findMobilizerReactionOnBodyAtMInGround(still);
    const Vec3 f = sign * onChild[1];
    const Vec3 arm = child.findStationLocationInGround(still, j.at) - b.findStationLocationInGround(still, j.at);
    return {f, (sign * onChild[0] + arm % f)[2]};
}

// loopForce returns the force of link a on link b at a joint outside the tree.
Vec3 Sweep::loopForce(const Joint& j) const {
    Vec3 sum(0);
    for (const ConstraintIndex i : j.planes) {
        const Constraint& plane = m.matter.getConstraint(i);
        const Vector_<SpatialVec> onBodies = plane.getConstrainedBodyForcesAsVector(still);
        for (ConstrainedBodyIndex k(0); k < plane.getNumConstrainedBodies(); ++k)
            if (plane.getMobilizedBodyFromConstrainedBody(k).getMobilizedBodyIndex() == m.links[j.b])
                sum -= onBodies[k][1];  // the engine reports them with the sign of the left-hand side
    }
    return sum;
}
