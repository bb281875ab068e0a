#include "inverse.h"

using namespace SimTK;

Inverse::Inverse(const Limb& l) {
    Force::Gravity(forces, matter, -YAxis, l.gravity);
    root = MobilizedBody::Translation(matter.Ground(), Body::Massless()).getMobilizedBodyIndex();
    chain = std::make_unique<Chain>(matter, root, l.segments);
    state = system.realizeTopology();
    system.realizeModel(state);
}

// move prescribes place, rate and acceleration of every coordinate.
void Inverse::move(const MotionSpec& m) {
    MobilizedBody& base = matter.updMobilizedBody(root);
    base.lockAt(state, Vector(vec(m.root[2])), Motion::Acceleration);
    base.setQFromVector(state, Vector(vec(m.root[0])));
    base.setUFromVector(state, Vector(vec(m.root[1])));
    size_t i = 0;
    for (const Part& part : chain->parts)
        for (const MobilizedBodyIndex k : part.hinges) {
            MobilizedBody& hinge = matter.updMobilizedBody(k);
            hinge.lockAt(state, m.accelerations.at(i), Motion::Acceleration);
            hinge.setOneQ(state, 0, m.angles.at(i));
            hinge.setOneU(state, 0, m.rates.at(i));
            i++;
        }
}

std::vector<Answer> Inverse::solve(const MotionSpec& m) {
    move(m);
    hand.clearAllForces(state);
    system.realize(state, Stage::Velocity);
    const MobilizedBody& loaded = matter.getMobilizedBody(chain->parts.at(m.load.segment).body);
    hand.setOneBodyForce(state, loaded, SpatialVec(vec(m.load.moment), Vec3(0)));
    hand.addForceToBodyPoint(state, loaded, vec(m.load.at), vec(m.load.force));
    system.realize(state, Stage::Acceleration);

    Vector motors;
    matter.findMotionForces(state, motors);
    std::vector<Answer> out;
    for (const Part& part : chain->parts) {
        const MobilizedBody& b = matter.getMobilizedBody(part.body);
        const SpatialVec inner = b.findMobilizerReactionOnBodyAtMInGround(state);
        Answer a{b.findStationLocationInGround(state, part.joint), b.findStationLocationInGround(state, part.com),
                 b.getBodyAngularVelocity(state), b.getBodyAngularAcceleration(state), inner[1], inner[0], {}};
        // The engine reports them with the sign of the left-hand side.
        for (const MobilizedBodyIndex k : part.hinges)
            a.hinges.push_back(-matter.getMobilizedBody(k).getOneFromUPartition(state, 0, motors));
        out.push_back(a);
    }
    return out;
}
