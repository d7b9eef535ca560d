#include <algorithm>
#include <cmath>
#include <string>

#include "backspring/core/angle.hpp"
#include "backspring/design/field.hpp"
#include "field_rows.hpp"
#include "rules.hpp"

namespace backspring {
namespace {

// A mid-line that leans more is no spring along the stations' line.
constexpr double kSteepestDeg = 45.0;
constexpr double kRoundingMm = 1e-9;  // a spring turned round has its end from a difference

constexpr RuleText kStationsRise{"stations_rise",
                                 "stations must rise (two alike make a step), got {1} after {0}"};
constexpr RuleText kRowsOnSpring{"rows_on_spring",
                                 "stations must lie on the spring, {0} to {1}, got {2} to {3}"};
constexpr RuleText kTooSteep{"mid_line_lean",
                             "must lean by at most {0} against the line of the pad, got {1}"};
constexpr RuleText kReachesRearPin{
    "reaches_rear_pin", "must reach back to the rear pin at {0}, got a first station at {1}"};
constexpr RuleText kReachesMiddlePin{
    "reaches_middle_pin", "must reach back to the middle pin at {0}, got a first station at {1}"};
constexpr RuleText kHoleFits{
    "hole_fits", "must leave steel on both sides where the spring is {0} thick, got {1}"};
constexpr RuleText kOffsetHoleFits{
    "hole_fits",
    "must leave steel on both sides where the spring is {0} thick, got {1} set off by {2}"};
constexpr RuleText kHoleIsOne{"hole_is_one", "must be 0 for none, or at least {0}, got {1}"};
constexpr RuleText kHolesApart{"holes_apart",
                               "must keep the pin holes apart, which needs more than {0}, got {1}"};
constexpr RuleText kPadRises{"pad_rises", "must end ahead of its start, got {0} to {1}"};
constexpr RuleText kPadOnSpring{"pad_on_spring",
                                "must lie on the spring, which ends at {0}, got {1} to {2}"};
constexpr RuleText kPadAheadOfHoles{
    "pad_ahead_of_holes", "must lie ahead of the pin holes, which end at {0}, got {1} to {2}"};
constexpr RuleText kInBand{"in_band", "must lie in its own band {0} to {1}, got {2}"};

template <class Rows>
void station_rules(Requirements& rules, std::string_view key, const Rows& rows) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double x = rows[i].x_mm;
        const bool good = rules.in_range(key, x, -kLongestMm, kLongestMm, Quantity::length);
        if (!good || i == 0) continue;
        const double last = rows[i - 1].x_mm;
        const bool third = i > 1 && x == last && last == rows[i - 2].x_mm;
        rules.require(!(x < last) && !third, key, kStationsRise, Quantity::length, {last}, {x});
    }
}

/// Rows of width or mid-line lie where there is steel.
template <class Rows>
void on_spring_rules(Requirements& rules,
                     std::string_view key,
                     const Rows& rows,
                     const Profile& profile) {
    if (rows.size() < 2 || profile.size() < 2) return;
    if (!rules.sound(key) || !rules.sound("spring.thickness")) return;
    const double rear = profile.front().x_mm, front = profile.back().x_mm;
    const double first = rows.front().x_mm, last = rows.back().x_mm;
    rules.require(first >= rear - kRoundingMm && last <= front + kRoundingMm, key, kRowsOnSpring,
                  Quantity::length, {rear, front}, {first, last});
}

void lean_rules(Requirements& rules, const MidLine& line) {
    constexpr std::string_view key = "spring.mid_line";
    if (!rules.sound(key)) return;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const MidLinePoint &a = line[i - 1], &b = line[i];
        if (a.x_mm == b.x_mm) continue;
        const double lean = degrees(std::atan(std::abs(slope(line, a.x_mm))));
        rules.require(lean <= kSteepestDeg, key, kTooSteep, Quantity::angle, {kSteepestDeg},
                      {lean});
    }
}

void reach_rules(Requirements& rules, const Spring& spring) {
    if (spring.thickness.size() < 2) return;
    const bool pinned = spring.support.kind == SupportKind::two_pins;
    const double rear = pinned ? -spring.support.rear_pin_mm : 0.0;
    const double start = spring.thickness.front().x_mm;
    rules.require(start <= rear, "spring.thickness", pinned ? kReachesRearPin : kReachesMiddlePin,
                  Quantity::length, {rear}, {start});
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

void hole_rules(Requirements& rules, const Spring& spring) {
    const bool sized = rules.sound("spring.pin_hole") && rules.sound("spring.pin_hole_offset");
    for (const Hole& hole : spring.holes) {
        const bool placed = rules.in_range("spring.rear_pin", hole.center_mm, -kLongestMm,
                                           kLongestMm, Quantity::length);
        if (!placed || !sized || !rules.sound("spring.thickness")) continue;
        if (hole.diameter_mm == 0.0) continue;
        const bool is_one =
            rules.require(hole.diameter_mm >= kThinnestMm, "spring.pin_hole", kHoleIsOne,
                          Quantity::length, {kThinnestMm}, {hole.diameter_mm});
        if (!is_one) continue;
        const double room = thinnest_across(spring.thickness, hole);
        const bool fits = hole.diameter_mm + 2.0 * std::abs(hole.offset_mm) < room;
        rules.require(fits, "spring.pin_hole", hole.offset_mm == 0.0 ? kHoleFits : kOffsetHoleFits,
                      Quantity::length, {room}, {hole.diameter_mm, hole.offset_mm});
    }
}

void hole_distance_rules(Requirements& rules, const Spring& spring) {
    if (!rules.sound("spring.pin_hole")) return;
    for (std::size_t i = 1; i < spring.holes.size(); ++i) {
        const Hole& a = spring.holes[i - 1];
        const Hole& b = spring.holes[i];
        const double apart = std::abs(a.center_mm - b.center_mm);
        const double needed = 0.5 * (a.diameter_mm + b.diameter_mm);
        rules.require(!(apart < needed), "spring.rear_pin", kHolesApart, Quantity::length, {needed},
                      {apart});
    }
}

void pad_rules(Requirements& rules, const Spring& spring, const Pad& pad) {
    constexpr std::string_view key = "spring.pad";
    if (!rules.sound(key)) return;
    const auto keep = [&](bool holds, const RuleText& rule, std::initializer_list<double> limits) {
        return rules.require(holds, key, rule, Quantity::length, limits,
                             {pad.start_mm, pad.end_mm});
    };
    if (!keep(pad.end_mm > pad.start_mm, kPadRises, {})) return;
    if (rules.sound("spring.thickness") && spring.thickness.size() > 1) {
        const double end = spring.thickness.back().x_mm;
        keep(pad.end_mm <= end + kRoundingMm, kPadOnSpring, {end});
    }
    for (const Hole& hole : spring.holes) {
        const double front = hole.center_mm + 0.5 * hole.diameter_mm;
        keep(!(front > pad.start_mm), kPadAheadOfHoles, {front});
    }
}

void band_rules(Requirements& rules, std::string_view key, const Band& band) {
    if (!rules.sound(key)) return;
    const auto sized = [&](double value) {
        return rules.in_range(key, value, 0.0, kStrongestBandMpa, Quantity::stress, true);
    };
    if (!sized(band.low) || !sized(band.high)) return;
    rules.require(band.low <= band.value && band.value <= band.high, key, kInBand, Quantity::stress,
                  {band.low, band.high}, {band.value});
}

}  // namespace

void detail::spring_rules(Requirements& rules,
                          const Spring& spring,
                          const Pad& pad,
                          const Strength& strength) {
    band_rules(rules, "spring.yield", strength.yield_mpa);
    if (strength.tensile_mpa.value != 0.0) {
        band_rules(rules, "spring.tensile", strength.tensile_mpa);
    }
    rules.require(!spring.thickness.empty(), "spring.thickness",
                  [] { return std::string("must have at least one station"); });
    station_rules(rules, "spring.thickness", spring.thickness);
    station_rules(rules, "spring.width", spring.widths);
    station_rules(rules, "spring.mid_line", spring.mid_line);
    on_spring_rules(rules, "spring.width", spring.widths, spring.thickness);
    on_spring_rules(rules, "spring.mid_line", spring.mid_line, spring.thickness);
    lean_rules(rules, spring.mid_line);
    if (rules.sound("spring.thickness") && rules.sound("spring.rear_pin") &&
        rules.sound("spring.support")) {
        reach_rules(rules, spring);
    }
    hole_rules(rules, spring);
    hole_distance_rules(rules, spring);
    pad_rules(rules, spring, pad);
}

}  // namespace backspring
