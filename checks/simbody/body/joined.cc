#include "joined.h"

#include <algorithm>

using namespace SimTK;

// Both as in ../sweep.cc: m and m/s, and rad or m.
const double closed = 1e-13;
const double stride = 0.05;

Joined::Joined(const Case& c, const Hold& h) : m(c) {
    root = MobilizedBody::Weld(m.matter.Ground(), vec(h.root), Body::Massless(), Vec3(0)).getMobilizedBodyIndex();
    chain = std::make_unique<Chain>(m.matter, root, h.segments);
    for (const Part& part : chain->parts) hinges.insert(hinges.end(), part.hinges.begin(), part.hinges.end());
    MobilizedBody& hand = m.matter.updMobilizedBody(chain->parts.back().body);
    grip = std::make_unique<Constraint::Ball>(m.link(c.contact->link), vec(h.handle), hand, vec(h.grip));

    whole = m.system.realizeTopology();
    m.system.realizeModel(whole);
    placing = moving = whole;
    grip->disable(placing);
    grip->disable(moving);
    m.mover().lockAt(moving, 1.0, Motion::Velocity);
    for (int k = 0; k < h.trunk; k++) m.matter.updMobilizedBody(hinges[k]).lockAt(whole, 0.0, Motion::Acceleration);
    hinges.erase(hinges.begin(), hinges.begin() + h.trunk);
}

JoinedAnswer Joined::solve(const Instant& i) {
    place(i.at);
    move(i.rate);
    lay(i);

    m.hand.clearAllForces(whole);
    m.system.realize(whole, Stage::Acceleration);
    JoinedAnswer a{0, 0, 0, whole.getUDot().normInf(), {}, Vec3(0)};
    for (size_t k = 0; k < hinges.size(); k++)
        m.hand.setOneMobilityForce(whole, m.matter.getMobilizedBody(hinges[k]), MobilizerUIndex(0), i.moments.at(k));
    m.system.realize(whole, Stage::Acceleration);
    a.gap = grip->getPositionErrorsAsVector(whole).norm();
    a.slip = grip->getVelocityErrorsAsVector(whole).norm();
    a.driver = m.mover().getOneUDot(whole, 0);
    for (const MobilizedBodyIndex k : hinges) a.hinges.push_back(m.matter.getMobilizedBody(k).getOneUDot(whole, 0));
    a.force = onHand();
    return a;
}

// place follows the machine alone from where it stands to driver coordinate q.
void Joined::place(double q) {
    const double from = m.mover().getOneQ(placing, 0);
    const int steps = std::max(1, int(std::ceil(std::abs(q - from) / stride)));
    for (int i = 1; i <= steps; i++) {
        m.mover().lockAt(placing, from + (q - from) * i / steps);
        m.system.realize(placing, Stage::Instance);
        m.system.projectQ(placing, closed);
    }
}

// move finds the machine's rates.
void Joined::move(double rate) {
    moving.setQ(placing.getQ());
    m.system.realize(moving, Stage::Position);
    m.system.projectU(moving, closed);
    whole.setQ(moving.getQ());
    whole.setU(rate * moving.getU());
}

// lay puts the arm where it is said to be; nothing draws it to the handle.
void Joined::lay(const Instant& i) {
    size_t k = 0;
    for (const Part& part : chain->parts)
        for (const MobilizedBodyIndex b : part.hinges) {
            m.matter.getMobilizedBody(b).setOneQ(whole, 0, i.angles.at(k));
            m.matter.getMobilizedBody(b).setOneU(whole, 0, i.rates.at(k));
            k++;
        }
}

// onHand returns the handle's force on the hand; the engine reports it with the
// sign of the left-hand side.
Vec3 Joined::onHand() const {
    const Vector_<SpatialVec> forces = grip->getConstrainedBodyForcesAsVector(whole);
    for (ConstrainedBodyIndex k(0); k < grip->getNumConstrainedBodies(); ++k)
        if (grip->getMobilizedBodyFromConstrainedBody(k).getMobilizedBodyIndex() == chain->parts.back().body)
            return -forces[k][1];
    return Vec3(NaN);
}
