#include "chain.h"

using namespace SimTK;

static Body::Rigid bodyOf(const SegmentSpec& s) {
    const Inertia atCentre(vec(s.inertia));
    return Body::Rigid(MassProperties(s.mass, vec(s.com), atCentre.shiftFromMassCenter(-vec(s.com), s.mass)));
}

Chain::Chain(SimbodyMatterSubsystem& matter, MobilizedBodyIndex parent, const std::vector<SegmentSpec>& segments) {
    for (const SegmentSpec& s : segments) {
        Part part{vec(s.joint), vec(s.com), {}, {}};
        for (size_t k = 0; k < s.axes.size(); k++) {
            const Body body = k + 1 < s.axes.size() ? Body(Body::Massless()) : Body(bodyOf(s));
            const Transform at(Rotation(UnitVec3(vec(s.axes[k])), ZAxis), part.joint);
            parent = MobilizedBody::Pin(matter.updMobilizedBody(parent), at, body, at).getMobilizedBodyIndex();
            part.hinges.push_back(parent);
        }
        if (s.axes.empty())
            parent = MobilizedBody::Weld(matter.updMobilizedBody(parent), part.joint, bodyOf(s), part.joint).getMobilizedBodyIndex();
        part.body = parent;
        parts.push_back(part);
    }
}
