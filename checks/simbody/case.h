// The neutral case as plain values. The format is described in ../case.go.
//
// Reading it stands apart from the engine: Simbody's comparison templates and
// the JSON library's iterators cannot meet in one file.
#pragma once

#include <array>
#include <istream>
#include <optional>
#include <string>
#include <vector>

using Pair = std::array<double, 2>;

struct Link {
    double mass, inertia;
    Pair com;
};

struct JointSpec {
    bool slides;
    int a, b;
    Pair at, axis;
};

struct Weight {
    int link;
    Pair at;
    double mass, inertia;
};

struct Spring {
    int a, b;
    Pair atA, atB;
    double rate, free;
};

struct Hand {
    int link;
    Pair at;
};

struct Case {
    double gravity;
    std::vector<Link> links;
    std::vector<JointSpec> joints;
    std::vector<Weight> weights;
    std::vector<Spring> springs;
    int driver;
    std::optional<Hand> contact;
    std::vector<double> at;
    bool slope;
    int repeat;
};

Case readCase(std::istream& in);
