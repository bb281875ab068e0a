#include "limb.h"

#include <nlohmann/json.hpp>

using nlohmann::json;

void from_json(const json& j, SegmentSpec& s) {
    s = {j.at("joint"), j.at("axes").get<std::vector<Triple>>(), j.at("mass"), j.at("com"), j.at("inertia")};
}

void from_json(const json& j, Load& l) { l = {j.at("segment"), j.at("at"), j.at("force"), j.at("moment")}; }

void from_json(const json& j, MotionSpec& m) {
    m = {j.at("root"), j.at("angles"), j.at("rates"), j.at("accelerations"), j.at("load").get<Load>()};
}

Limb readLimb(std::istream& in) {
    const json j = json::parse(in);
    return {j.at("gravity"), j.at("segments").get<std::vector<SegmentSpec>>(), j.at("motions").get<std::vector<MotionSpec>>()};
}

void from_json(const json& j, Instant& i) {
    i = {j.at("at"), j.at("rate"), j.at("angles"), j.at("rates"), j.at("moments")};
}

Hold readHold(std::istream& in) {
    const json j = json::parse(in);
    return {j.at("machine").dump(), j.at("segments").get<std::vector<SegmentSpec>>(), j.at("root"), j.at("grip"), j.at("handle"),
            j.at("trunk"), j.at("instants").get<std::vector<Instant>>()};
}
