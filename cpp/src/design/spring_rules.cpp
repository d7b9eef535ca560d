#include <algorithm>
#include <cmath>
#include <string>

#include "rules.hpp"

namespace backspring {
namespace {

constexpr double kStrongestMpa = 1e5;
constexpr double kRoundingMm = 1e-9;  // a spring turned round has its end from a difference

bool thickness_rules(Requirements& rules, const Profile& profile) {
    constexpr std::string_view key = "spring.thickness";
    bool good = rules.require(!profile.empty(), key,
                              [] { return std::string("must have at least one station"); });
    for (std::size_t i = 0; i < profile.size(); ++i) {
        const Station& s = profile[i];
        good &= rules.in_range(key, s.x_mm, -kLongestMm, kLongestMm, "mm");
        good &= rules.positive(key, s.thickness_mm, kThickestMm, "mm");
        if (i == 0) continue;
        const double last = profile[i - 1].x_mm;
        const bool third = i > 1 && s.x_mm == last && last == profile[i - 2].x_mm;
        good &= rules.require(!(s.x_mm < last) && !third, key, [&] {
            return "stations must rise (two alike make a step), got " + mm(s.x_mm) + " after " +
                   mm(last);
        });
    }
    return good;
}

bool support_rules(Requirements& rules, const Support& support) {
    switch (support.kind) {
        case SupportKind::two_pins:
            return rules.positive("spring.rear_pin", support.rear_pin_mm, kLongestMm, "mm");
        case SupportKind::root_stiffness:
            return rules.positive("spring.support", support.root_stiffness_nmm_per_rad, 1e12,
                                  "N mm/rad");
        case SupportKind::clamped:
            break;
    }
    return true;
}

void reach_rules(Requirements& rules, const Spring& spring) {
    if (spring.thickness.size() < 2) return;
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double rear = pinned ? -spring.support.rear_pin_mm : 0.0;
    const double start = spring.thickness.front().x_mm;
    rules.require(start <= rear, "spring.thickness", [&] {
        return std::string("must reach back to the ") + (pinned ? "rear" : "middle") + " pin at " +
               mm(rear) + ", got a first station at " + mm(start);
    });
}

double thinnest_across(const Profile& profile, const Hole& hole) {
    const double rear = hole.center_mm - 0.5 * hole.diameter_mm;
    const double front = hole.center_mm + 0.5 * hole.diameter_mm;
    double thinnest = std::min(thickness_mm(profile, rear), thickness_mm(profile, front));
    for (const Station& s : profile) {
        if (s.x_mm > rear && s.x_mm < front) thinnest = std::min(thinnest, s.thickness_mm);
    }
    return thinnest;
}

void hole_rules(Requirements& rules, const Spring& spring, bool thickness_good) {
    for (const Hole& hole : spring.holes) {
        const bool sized =
            rules.in_range("spring.pin_hole", hole.diameter_mm, 0.0, kThickestMm, "mm") &&
            rules.in_range("spring.pin_hole_offset", hole.offset_mm, -kThickestMm, kThickestMm,
                           "mm") &&
            rules.in_range("spring.rear_pin", hole.center_mm, -kLongestMm, kLongestMm, "mm");
        if (!sized || !thickness_good || hole.diameter_mm == 0.0) continue;
        const double room = thinnest_across(spring.thickness, hole);
        const bool fits = hole.diameter_mm + 2.0 * std::abs(hole.offset_mm) < room;
        rules.require(fits, "spring.pin_hole", [&] {
            const std::string aside =
                hole.offset_mm == 0.0 ? "" : " set off by " + mm(hole.offset_mm);
            return "must leave steel on both sides where the spring is " + mm(room) +
                   " thick, got " + mm(hole.diameter_mm) + aside;
        });
    }
}

void hole_distance_rules(Requirements& rules, const Spring& spring) {
    for (std::size_t i = 1; i < spring.holes.size(); ++i) {
        const Hole& a = spring.holes[i - 1];
        const Hole& b = spring.holes[i];
        const double apart = std::abs(a.center_mm - b.center_mm);
        const double needed = 0.5 * (a.diameter_mm + b.diameter_mm);
        rules.require(!(apart < needed), "spring.rear_pin", [&] {
            return "must keep the pin holes apart, which needs more than " + mm(needed) + ", got " +
                   mm(apart);
        });
    }
}

void pad_rules(Requirements& rules, const Spring& spring, bool thickness_good) {
    constexpr std::string_view key = "spring.pad";
    const Pad& pad = spring.pad;
    if (!rules.positive(key, pad.start_mm, kLongestMm, "mm")) return;
    if (!rules.positive(key, pad.end_mm, kLongestMm, "mm")) return;
    const auto got = [&] { return ", got " + mm(pad.start_mm) + " to " + mm(pad.end_mm); };
    const bool ahead = rules.require(pad.end_mm > pad.start_mm, key,
                                     [&] { return "must end ahead of its start" + got(); });
    if (!ahead) return;
    if (thickness_good && spring.thickness.size() > 1) {
        const double end = spring.thickness.back().x_mm;
        rules.require(pad.end_mm <= end + kRoundingMm, key,
                      [&] { return "must lie on the spring, which ends at " + mm(end) + got(); });
    }
    for (const Hole& hole : spring.holes) {
        const double front = hole.center_mm + 0.5 * hole.diameter_mm;
        rules.require(!(front > pad.start_mm), key, [&] {
            return "must lie ahead of the pin holes, which end at " + mm(front) + got();
        });
    }
}

void band_rules(Requirements& rules, std::string_view key, const Band& band) {
    const bool sized = rules.positive(key, band.value, kStrongestMpa, "MPa") &&
                       rules.positive(key, band.low, kStrongestMpa, "MPa") &&
                       rules.positive(key, band.high, kStrongestMpa, "MPa");
    if (!sized) return;
    rules.require(band.low <= band.value && band.value <= band.high, key, [&] {
        return "must lie in its own band " + with_unit(band.low, "MPa") + " to " +
               with_unit(band.high, "MPa") + ", got " + with_unit(band.value, "MPa");
    });
}

}  // namespace

void spring_rules(Requirements& rules, const Spring& spring, const Strength& strength) {
    rules.in_range("spring.youngs_modulus", spring.elastic.youngs_modulus_mpa, 1e3, 1e6, "MPa");
    rules.in_range("spring.poisson", spring.elastic.poisson, 0.0, 0.49, "");
    band_rules(rules, "spring.yield", strength.yield_mpa);
    if (strength.tensile_mpa.value != 0.0) {
        band_rules(rules, "spring.tensile", strength.tensile_mpa);
    }
    rules.positive("spring.width", spring.width_mm, kThickestMm, "mm");
    const bool thickness_good = thickness_rules(rules, spring.thickness);
    const bool support_good = support_rules(rules, spring.support);
    if (thickness_good && support_good) reach_rules(rules, spring);
    hole_rules(rules, spring, thickness_good);
    hole_distance_rules(rules, spring);
    pad_rules(rules, spring, thickness_good);
}

}  // namespace backspring
