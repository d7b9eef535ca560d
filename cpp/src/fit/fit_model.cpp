#include "backspring/fit/fit_model.hpp"

#include <algorithm>
#include <utility>

#include "backspring/action/unloaded_readings.hpp"
#include "backspring/check/bounds.hpp"
#include "backspring/check/closed_blade.hpp"
#include "backspring/design/cases.hpp"
#include "backspring/design/joint_of.hpp"
#include "loaded_joint.hpp"

namespace backspring {
namespace {

constexpr double kNoKickMm = 1e-6;

void tilt(Joint& joint, double tilt_rad) {
    joint.face_slope += tilt_rad;
    joint.face_mm -= tilt_rad * joint.pivot_mm;
}

/// A grinder on a face does not touch a round end. A face that stands proud of the drawing leaves
/// the end at least half as far beyond it as drawn, or else the closed blade would have no rest.
double round_end_left_mm(const Tang& drawn, double closed_mm) {
    const double radius = round_end_radius_mm(drawn);
    return std::max(radius, closed_mm + 0.5 * (radius - drawn.closed_mm));
}

void require_good(const Design& design) {
    std::vector<Fault> broken = faults(design);
    if (!broken.empty()) throw InvalidInput(std::move(broken));
}

void raise(std::optional<double>& reading, double by_mm) {
    if (reading) *reading += by_mm;
}

struct Loaded {
    Readings readings;
    std::optional<double> closed_angle_deg;
};

/// Readings that are possible; the others are none.
Readings possible(const Design& design, const Readings& shown) {
    return {.closed_mm = if_possible(design, ResultKind::reading, shown.closed_mm),
            .half_stop_mm = if_possible(design, ResultKind::reading, shown.half_stop_mm)};
}

Loaded loaded_readings(const Design& design, const FitUnknowns& unknowns) {
    const Joint joint = detail::loaded_joint(design, unknowns);
    const Rests rests = find_rests(joint, design.own().tang.half_stop_mm.has_value());
    Loaded loaded{.readings = possible(design, readings(joint, rests)),
                  .closed_angle_deg = std::nullopt};
    raise(loaded.readings.half_stop_mm, unknowns.loaded_offset_mm);
    raise(loaded.readings.closed_mm, unknowns.loaded_offset_mm);
    if (rests.closed) loaded.closed_angle_deg = rests.closed->blade_angle_deg;
    return loaded;
}

void lower(std::optional<double>& reading, const std::optional<double>& to) {
    reading = reading && to ? std::optional(std::min(*reading, *to)) : std::nullopt;
}

Readings unloaded_readings(const Design& design, const FitUnknowns& unknowns) {
    Joint joint = make_unloaded_joint(design);
    tilt(joint, unknowns.pad_tilt_rad);
    Readings shown = possible(design, unloaded_readings(joint, design.own().tang));
    const double ratio = design.own().fit.dial_mm / design.own().tang.pivot_mm;
    raise(shown.half_stop_mm, 0.5 * unknowns.pivot_play_mm * ratio);
    raise(shown.closed_mm, 0.5 * unknowns.pivot_play_mm * ratio);
    return shown;
}

}  // namespace

Joint detail::loaded_joint(const Design& design, const FitUnknowns& unknowns) {
    Joint joint = make_joint(design);
    joint.flexibility.root_rotation_rad_per_nmm += unknowns.extra_root_rad_per_nmm;
    tilt(joint, unknowns.pad_tilt_rad);
    return joint;
}

std::string name_of(TangFace face) {
    switch (face) {
        case TangFace::half_stop:
            return "half_stop";
        case TangFace::closed:
            return "closed";
        case TangFace::kick:
            return "kick";
        case TangFace::open:
            break;
    }
    return "open";
}

double& FaceDepths::of(TangFace face) {
    switch (face) {
        case TangFace::half_stop:
            return half_stop_mm;
        case TangFace::closed:
            return closed_mm;
        case TangFace::kick:
            return kick_mm;
        case TangFace::open:
            break;
    }
    return open_mm;
}

double FaceDepths::of(TangFace face) const { return FaceDepths(*this).of(face); }

Blade take_off(Blade blade, const FaceDepths& depths) {
    Tang& tang = blade.tang;
    const Tang before = tang;
    tang.open_mm -= depths.open_mm;
    blade.fit.preload_mm -= depths.open_mm;
    if (tang.half_stop_mm) {
        *tang.half_stop_mm -= depths.half_stop_mm;
    } else if (!tang.round_end_mm && tang.outline.empty()) {
        tang.round_end_mm = round_end_left_mm(before, tang.closed_mm - depths.closed_mm);
    }
    tang.closed_mm -= depths.closed_mm;
    if (tang.kick) {
        tang.kick->height_mm += depths.closed_mm - depths.kick_mm;
        if (tang.kick->height_mm < kNoKickMm) tang.kick.reset();
    }
    return blade;
}

Design take_off(const Design& design, const FaceDepths& depths) {
    Design ground = design;
    ground.own() = take_off(std::move(ground.own()), depths);
    return ground;
}

Design as_read(Design design) {
    for (std::size_t i = 1; i < design.blades.size(); ++i) {
        Blade& blade = design.blades[i];
        if (blade.end == design.own().end) blade.stands = Stand::open;
    }
    return design;
}

std::vector<Design> reading_cases(const Design& design) {
    std::vector<Design> all;
    for (Design& one : cases(design)) {
        const auto otherwise = [&](const Blade& blade) {
            return &blade != &one.own() && blade.end == one.own().end &&
                   blade.stands != Stand::open;
        };
        if (std::ranges::none_of(one.blades, otherwise)) all.push_back(std::move(one));
    }
    return all;
}

Readings lowest_readings(const Design& design, const FitUnknowns& unknowns) {
    require_good(design);
    const std::vector<Design> all = reading_cases(design);
    Readings lowest = loaded_readings(all.front(), unknowns).readings;
    for (std::size_t i = 1; i < all.size(); ++i) {
        const Readings shown = loaded_readings(all[i], unknowns).readings;
        lower(lowest.half_stop_mm, shown.half_stop_mm);
        lower(lowest.closed_mm, shown.closed_mm);
    }
    return lowest;
}

Readings readings_in(FitState state, const Design& design, const FitUnknowns& unknowns) {
    require_good(design);
    return state == FitState::loaded ? loaded_readings(as_read(design), unknowns).readings
                                     : unloaded_readings(design, unknowns);
}

FitReadings fit_readings(const Design& design, const FitUnknowns& unknowns) {
    require_good(design);
    const Loaded loaded = loaded_readings(as_read(design), unknowns);
    return {.loaded = loaded.readings,
            .unloaded = unloaded_readings(design, unknowns),
            .closed_angle_deg = loaded.closed_angle_deg};
}

std::optional<double> tip_height_mm(const Design& design, double closed_angle_deg) {
    const auto tip = blade_tip(design);
    if (!tip) return std::nullopt;
    return height_in_handle_mm(*tip, closed_angle_deg);
}

}  // namespace backspring
