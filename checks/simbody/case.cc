#include "case.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

using nlohmann::json;

void from_json(const json& j, Link& l) { l = {j.at("mass"), j.at("inertia"), j.at("com")}; }

void from_json(const json& j, JointSpec& s) {
    const std::string kind = j.at("kind");
    if (kind != "pin" && kind != "slide") throw std::runtime_error("joint of unknown kind " + kind);
    s = {kind == "slide", j.at("a"), j.at("b"), j.at("at"), j.value("axis", Pair{})};
}

void from_json(const json& j, Weight& w) { w = {j.at("link"), j.at("at"), j.at("mass"), j.value("inertia", 0.0)}; }

void from_json(const json& j, Spring& s) {
    s = {j.at("a"), j.at("b"), j.at("atA"), j.at("atB"), j.at("rate"), j.at("free")};
}

void from_json(const json& j, Hand& c) { c = {j.at("link"), j.at("at")}; }

template <class T>
static std::vector<T> listed(const json& j, const char* key) {
    return j.value(key, json::array()).get<std::vector<T>>();
}

Case readCase(std::istream& in) {
    const json j = json::parse(in);
    for (const char* key : {"ropes", "elements", "chains"})
        if (!j.value(key, json::array()).empty()) throw std::runtime_error(std::string(key) + ": not supported");
    Case c{j.at("gravity"), {}, listed<JointSpec>(j, "joints"), listed<Weight>(j, "weights"),
           listed<Spring>(j, "springs"), j.at("driver"), std::nullopt,
           j.at("at"), j.value("slope", false), j.value("repeat", 1)};
    c.links = j.at("links").get<std::vector<Link>>();
    if (j.contains("contact")) c.contact = j.at("contact").get<Hand>();
    return c;
}
