// Inverse dynamics of limbs with Simbody: reads a limb on standard input and
// writes its answers on standard output (both formats are in ../../body.go).
#include <iostream>
#include <nlohmann/json.hpp>

#include "inverse.h"

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

int main() {
    try {
        const Limb l = readLimb(std::cin);
        Inverse inverse(l);
        json out = json::array();
        for (const MotionSpec& m : l.motions) out.push_back(written(inverse.solve(m)));
        std::cout << out << "\n";
    } catch (const std::exception& e) {
        std::cerr << "simbody: " << e.what() << "\n";
        return 1;
    }
}
