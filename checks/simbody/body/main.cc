// Inverse dynamics of limbs with Simbody or, with any argument, an arm and the
// machine it holds as one system: reads a document on standard input and writes
// the answers on standard output (formats in ../../body.go).
#include <iostream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "inverse.h"
#include "joined.h"

using nlohmann::json;

static json written(const SimTK::Vec3& v) { return json::array({v[0], v[1], v[2]}); }

static json written(const std::vector<Answer>& answers) {
    json out = json::array();
    for (const Answer& a : answers)
        out.push_back({{"joint", written(a.joint)},
                       {"com", written(a.com)},
                       {"omega", written(a.omega)},
                       {"alpha", written(a.alpha)},
                       {"force", written(a.force)},
                       {"moment", written(a.moment)},
                       {"hinges", a.hinges}});
    return out;
}

static json written(const JoinedAnswer& a) {
    return {{"gap", a.gap}, {"slip", a.slip}, {"driver", a.driver}, {"loose", a.loose}, {"hinges", a.hinges}, {"force", written(a.force)}};
}

static json inverse() {
    const Limb l = readLimb(std::cin);
    Inverse inverse(l);
    json out = json::array();
    for (const MotionSpec& m : l.motions) out.push_back(written(inverse.solve(m)));
    return out;
}

static json joined() {
    const Hold h = readHold(std::cin);
    std::istringstream machine(h.machine);
    Joined joined(readCase(machine), h);
    json out = json::array();
    for (const Instant& i : h.instants) out.push_back(written(joined.solve(i)));
    return out;
}

int main(int argc, char**) {
    try {
        std::cout << (argc > 1 ? joined() : inverse()) << "\n";
    } catch (const std::exception& e) {
        std::cerr << "simbody: " << e.what() << "\n";
        return 1;
    }
}
