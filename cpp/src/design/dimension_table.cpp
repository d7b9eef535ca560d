#include "dimension_table.hpp"

#include <algorithm>
#include <array>

namespace backspring {
namespace {

using Number = std::optional<double>;

bool always(const Design&) { return true; }
bool has_holes(const Design& d) { return !d.spring.holes.empty(); }
bool has_kick(const Design& d) { return d.tang.kick.has_value(); }
bool has_half_stop(const Design& d) { return d.tang.half_stop_mm.has_value(); }
bool has_round_end(const Design& d) { return !has_half_stop(d); }
bool has_nick(const Design& d) { return d.blade.nail_nick_mm.has_value(); }
bool has_rear_pin(const Design& d) { return d.spring.support.kind == SupportKind::two_pins; }

Number thickness(const Design& d) {
    const Profile& profile = d.spring.thickness;
    const auto differs = [&](const Station& s) {
        return s.thickness_mm != profile.front().thickness_mm;
    };
    if (profile.empty() || std::any_of(profile.begin(), profile.end(), differs)) return {};
    return profile.front().thickness_mm;
}

template <class Change>
void change_thickness(Design& d, Change change) {
    for (Station& station : d.spring.thickness) {
        station.thickness_mm = change(station.thickness_mm);
    }
}

void set_yield(Design& d, double value) {
    Band& yield = d.strength.yield_mpa;
    const double ratio = value / yield.value;
    yield = {.value = value, .low = ratio * yield.low, .high = ratio * yield.high};
}

void set_rear_pin(Design& d, double value) {
    double& rear_pin = d.spring.support.rear_pin_mm;
    for (Hole& hole : d.spring.holes) {
        if (hole.center_mm == -rear_pin) hole.center_mm = -value;
    }
    rear_pin = value;
}

Number pin_hole(const Design& d) {
    const auto& holes = d.spring.holes;
    const auto differs = [&](const Hole& h) { return h.diameter_mm != holes.front().diameter_mm; };
    if (holes.empty() || std::any_of(holes.begin(), holes.end(), differs)) return {};
    return holes.front().diameter_mm;
}

void set_pin_hole(Design& d, double value) {
    for (Hole& hole : d.spring.holes) hole.diameter_mm = value;
}

Number corner_radius(const Design& d) {
    if (d.tang.corner_open_mm != d.tang.corner_closed_mm) return {};
    return d.tang.corner_open_mm;
}

Number kick(const Design& d, double Kick::*member) {
    return d.tang.kick ? Number((*d.tang.kick).*member) : Number();
}

// A plain number of a design: where it is says all.
#define BACKSPRING_DIMENSION(key, unit, has, place)                        \
    DimensionEntry {                                                       \
        key, unit, has, [](const Design& d) -> Number { return d.place; }, \
            [](Design& d, double value) { d.place = value; }               \
    }
#define BACKSPRING_KICK(name)                                               \
    DimensionEntry {                                                        \
        "tang.kick." #name, "mm", has_kick,                                 \
            [](const Design& d) { return kick(d, &Kick::name##_mm); },      \
            [](Design& d, double value) { d.tang.kick->name##_mm = value; } \
    }

const std::array kTable{
    DimensionEntry{
        "spring.thickness", "mm", always, thickness,
        [](Design& d, double value) { change_thickness(d, [&](double) { return value; }); }},
    DimensionEntry{
        "spring.thickness_scale", "", always, [](const Design&) -> Number { return 1.0; },
        [](Design& d, double value) { change_thickness(d, [&](double t) { return t * value; }); }},
    DimensionEntry{
        "spring.thickness_offset", "mm", always, [](const Design&) -> Number { return 0.0; },
        [](Design& d, double value) { change_thickness(d, [&](double t) { return t + value; }); }},
    BACKSPRING_DIMENSION("spring.width", "mm", always, spring.width_mm),
    BACKSPRING_DIMENSION("spring.youngs_modulus", "MPa", always, spring.elastic.youngs_modulus_mpa),
    BACKSPRING_DIMENSION("spring.poisson", "", always, spring.elastic.poisson),
    DimensionEntry{"spring.yield", "MPa", always,
                   [](const Design& d) -> Number { return d.strength.yield_mpa.value; }, set_yield},
    DimensionEntry{"spring.rear_pin", "mm", has_rear_pin,
                   [](const Design& d) -> Number { return d.spring.support.rear_pin_mm; },
                   set_rear_pin},
    DimensionEntry{"spring.pin_hole", "mm", has_holes, pin_hole, set_pin_hole},
    BACKSPRING_DIMENSION("tang.pivot", "mm", always, tang.pivot_mm),
    BACKSPRING_DIMENSION("tang.open", "mm", always, tang.open_mm),
    BACKSPRING_DIMENSION("tang.half_stop", "mm", has_half_stop, tang.half_stop_mm),
    BACKSPRING_DIMENSION("tang.closed", "mm", always, tang.closed_mm),
    DimensionEntry{
        "tang.corner_radius", "mm", always, corner_radius,
        [](Design& d, double value) { d.tang.corner_open_mm = d.tang.corner_closed_mm = value; }},
    BACKSPRING_DIMENSION("tang.front", "mm", always, tang.front_mm),
    DimensionEntry{"tang.round_end", "mm", has_round_end,
                   [](const Design& d) -> Number { return round_end_radius_mm(d.tang); },
                   [](Design& d, double value) { d.tang.round_end_mm = value; }},
    BACKSPRING_KICK(distance),
    BACKSPRING_KICK(height),
    BACKSPRING_KICK(radius),
    BACKSPRING_DIMENSION("fit.preload", "mm", always, fit.preload_mm),
    DimensionEntry{"fit.rear_pin_offset", "mm", has_rear_pin,
                   [](const Design& d) -> Number {
                       return d.fit.preload_mm * d.spring.support.rear_pin_mm / d.tang.pivot_mm;
                   },
                   // The spring turns on the middle pin as it is pulled home: similar triangles.
                   [](Design& d, double value) {
                       d.fit.preload_mm = value * (d.tang.pivot_mm / d.spring.support.rear_pin_mm);
                   }},
    BACKSPRING_DIMENSION("fit.dial", "mm", always, fit.dial_mm),
    BACKSPRING_DIMENSION("blade.nail_nick", "mm", has_nick, blade.nail_nick_mm),
    BACKSPRING_DIMENSION("friction.spring", "", always, friction.spring),
    BACKSPRING_DIMENSION("friction.pivot", "", always, friction.pivot),
    BACKSPRING_DIMENSION("friction.pivot_pin", "mm", always, friction.pivot_pin_mm),
};

#undef BACKSPRING_DIMENSION
#undef BACKSPRING_KICK

}  // namespace

std::span<const DimensionEntry> dimension_table() { return kTable; }

const DimensionEntry* find_dimension(std::string_view key) {
    const auto found = std::find_if(kTable.begin(), kTable.end(),
                                    [&](const DimensionEntry& e) { return e.key == key; });
    return found == kTable.end() ? nullptr : &*found;
}

}  // namespace backspring
