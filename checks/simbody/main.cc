// Sweeps one neutral case with Simbody: reads the case on standard input and
// writes its results on standard output (both formats are in ../case.go).
#include <algorithm>
#include <chrono>
#include <iostream>
#include <nlohmann/json.hpp>

#include "sweep.h"

using nlohmann::json;

static json planar(const SimTK::Vec3& v) { return json::array({v[0], v[1]}); }

static json written(const Position& p) {
    json poses = json::array(), reactions = json::array(), loads = json::array();
    for (const SimTK::Vec3& v : p.loads) loads.push_back(planar(v));
    for (const SimTK::Transform& x : p.poses)
        poses.push_back({{"turn", std::atan2(x.R()[1][0], x.R()[0][0])}, {"shift", planar(x.p())}});
    for (const Reaction& r : p.reactions) reactions.push_back({{"force", planar(r.force)}, {"moment", r.moment}});
    return {{"at", p.at},
            {"poses", poses},
            {"rates", p.rates},
            {"loads", loads},
            {"velocity", planar(p.velocity)},
            {"acceleration", planar(p.acceleration)},
            {"mass", p.mass},
            {"massSlope", p.massSlope},
            {"drive", p.drive},
            {"hold", planar(p.hold)},
            {"left", p.left},
            {"reactions", reactions}};
}

// timed sweeps the case and returns the microseconds each position took, the
// system being built beforehand.
static double timed(const Case& c, std::vector<Position>& rows) {
    rows.clear();
    Sweep sweep(c);
    const auto start = std::chrono::steady_clock::now();
    for (const double q : c.at) rows.push_back(sweep.position(q));
    const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
    return took.count() / c.at.size();
}

int main() {
    try {
        const Case c = readCase(std::cin);
        std::vector<Position> rows;
        std::vector<double> micros(c.repeat);
        for (double& took : micros) took = timed(c, rows);

        json positions = json::array();
        for (const Position& p : rows) positions.push_back(written(p));
        std::cout << json{{"micros", *std::min_element(micros.begin(), micros.end())}, {"positions", positions}} << "\n";
    } catch (const std::exception& e) {
        std::cerr << "simbody: " << e.what() << "\n";
        return 1;
    }
}
