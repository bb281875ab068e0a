#include "machine.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

using namespace SimTK;

Machine::Machine(const Case& c) : driver(c.driver) {
    for (const JointSpec& s : c.joints) {
        Joint j;
        j.a = s.a;
        j.b = s.b;
        j.at = point(s.at);
        joints.push_back(j);
    }
    chooseTree(c);
    growTree(c);
    for (size_t i = 0; i < joints.size(); i++) {
        if (joints[i].inTree) continue;
        if (c.joints[i].slides) throw std::runtime_error("a slide closes a loop: not supported");
        closeLoop(joints[i]);
    }
    addLoads(c);
}

// chooseTree marks a spanning tree of the links. The driver comes first
// because only a mobilizer can be locked; then the slides, because two plane
// constraints close a pin but not a slide.
void Machine::chooseTree(const Case& c) {
    std::vector<int> order(joints.size());
    std::iota(order.begin(), order.end(), 0);
    auto rank = [&](int i) { return i == driver ? 0 : c.joints[i].slides ? 1 : 2; };
    std::stable_sort(order.begin(), order.end(), [&](int p, int q) { return rank(p) < rank(q); });

    std::vector<int> group(c.links.size());
    std::iota(group.begin(), group.end(), 0);
    for (int i : order) {
        const int from = group.at(joints[i].a), into = group.at(joints[i].b);
        if (from == into) continue;
        joints[i].inTree = true;
        std::replace(group.begin(), group.end(), from, into);
    }
}

// growTree adds one body per link, outward from ground.
void Machine::growTree(const Case& c) {
    links.assign(c.links.size(), MobilizedBodyIndex());
    links[0] = matter.Ground().getMobilizedBodyIndex();
    for (bool grew = true; grew;) {
        grew = false;
        for (size_t i = 0; i < joints.size(); i++) {
            Joint& j = joints[i];
            if (!j.inTree || links[j.a].isValid() == links[j.b].isValid()) continue;
            const int parent = links[j.a].isValid() ? j.a : j.b;
            addMobilizer(j, c.joints[i], parent, c.links[parent == j.a ? j.b : j.a]);
            links[parent == j.a ? j.b : j.a] = j.child;
            grew = true;
        }
    }
    for (size_t i = 0; i < links.size(); i++)
        if (!links[i].isValid()) throw std::runtime_error("link " + std::to_string(i) + " hangs on nothing");
}

void Machine::addMobilizer(Joint& j, const JointSpec& s, int parent, const Link& l) {
    // Only the z moment of inertia acts in the plane; the sphere-like body
    // keeps the tensor valid in space.
    const Vec3 com = point(l.com);
    const Body::Rigid body(MassProperties(l.mass, com, Inertia(l.inertia).shiftFromMassCenter(-com, l.mass)));

    const Transform at(Rotation(s.slides ? std::atan2(s.axis[1], s.axis[0]) : 0, ZAxis), j.at);
    const auto sense = parent == j.a ? MobilizedBody::Forward : MobilizedBody::Reverse;
    if (s.slides)
        j.child = MobilizedBody::Slider(link(parent), at, body, at, sense).getMobilizedBodyIndex();
    else
        j.child = MobilizedBody::Pin(link(parent), at, body, at, sense).getMobilizedBodyIndex();
}

// closeLoop holds the pin's point on b in two planes of a. A ball constraint
// would add a third, redundant row across the plane of motion.
void Machine::closeLoop(Joint& j) {
    const Constraint::PointInPlane x(link(j.a), UnitVec3(XAxis), j.at[0], link(j.b), j.at);
    const Constraint::PointInPlane y(link(j.a), UnitVec3(YAxis), j.at[1], link(j.b), j.at);
    j.planes = {x.getConstraintIndex(), y.getConstraintIndex()};
}

void Machine::addLoads(const Case& c) {
    Force::Gravity(forces, matter, -YAxis, c.gravity);
    for (const Weight& w : c.weights) {
        const Body::Rigid body(MassProperties(w.mass, Vec3(0), Inertia(w.inertia)));
        MobilizedBody::Weld(link(w.link), Transform(point(w.at)), body, Transform());
    }
    for (const Spring& s : c.springs)
        Force::TwoPointLinearSpring(forces, link(s.a), point(s.atA), link(s.b), point(s.atB), s.rate, s.free);
}
