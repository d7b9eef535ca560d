#include <algorithm>
#include <cmath>
#include <string>

#include "rules.hpp"

namespace backspring {
namespace {

bool pivot_rules(Requirements& rules, const Tang& tang, const Pad& pad) {
    if (!rules.positive("tang.pivot", tang.pivot_mm, kLongestMm, "mm")) return false;
    if (!std::isfinite(pad.start_mm) || !std::isfinite(pad.end_mm)) return true;
    const bool between = pad.start_mm < tang.pivot_mm && tang.pivot_mm < pad.end_mm;
    return rules.require(between, "tang.pivot", [&] {
        return "must lie between the pad's edges at " + mm(pad.start_mm) + " and " +
               mm(pad.end_mm) + ", got " + mm(tang.pivot_mm);
    });
}

bool face_rules(Requirements& rules, const Tang& tang) {
    bool good = rules.positive("tang.open", tang.open_mm, kLongestMm, "mm");
    if (tang.half_stop_mm) {
        good &= rules.positive("tang.half_stop", *tang.half_stop_mm, kLongestMm, "mm");
    }
    good &= rules.positive("tang.closed", tang.closed_mm, kLongestMm, "mm");
    return good;
}

bool corner_rules(Requirements& rules, const Tang& tang, double radius, double face) {
    constexpr std::string_view key = "tang.corner_radius";
    if (!rules.in_range(key, radius, 0.0, kLongestMm, "mm")) return false;
    const double room = tang.half_stop_mm ? std::min(face, *tang.half_stop_mm) : face;
    return rules.require(radius <= room, key, [&] {
        return "must not be larger than the faces it joins (" + mm(room) + "), got " + mm(radius);
    });
}

bool round_end_rules(Requirements& rules, const Tang& tang) {
    if (!tang.round_end_mm) return true;
    constexpr std::string_view key = "tang.round_end";
    const bool alone = rules.require(!tang.half_stop_mm, key, [] {
        return std::string("must be left out when there is a half_stop");
    });
    const double least = std::max(tang.open_mm, tang.closed_mm);
    return rules.in_range(key, *tang.round_end_mm, least, kLongestMm, "mm") && alone;
}

bool kick_rules(Requirements& rules, const Tang& tang) {
    if (!tang.kick) return true;
    const Kick& kick = *tang.kick;
    bool good = rules.positive("tang.kick.distance", kick.distance_mm, kLongestMm, "mm");
    good &= rules.positive("tang.kick.height", kick.height_mm, kThickestMm, "mm");
    good &= rules.positive("tang.kick.radius", kick.radius_mm, kThickestMm, "mm");
    return good;
}

}  // namespace

bool tang_rules(Requirements& rules, const Tang& tang, const Pad& pad) {
    bool good = pivot_rules(rules, tang, pad);
    const bool faces = face_rules(rules, tang);
    good &= faces;
    if (faces) {
        good &= corner_rules(rules, tang, tang.corner_open_mm, tang.open_mm);
        good &= corner_rules(rules, tang, tang.corner_closed_mm, tang.closed_mm);
        good &= round_end_rules(rules, tang);
    }
    good &= rules.positive("tang.front", tang.front_mm, kLongestMm, "mm");
    good &= kick_rules(rules, tang);
    return good;
}

}  // namespace backspring
