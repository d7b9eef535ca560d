#include "backspring/check/frame_effect.hpp"

#include <algorithm>

#include "backspring/design/joint_of.hpp"

namespace backspring {
namespace {

constexpr double kStiffLinerMm = 1.2;
constexpr double kSlenderLinerMm = 1.0;
constexpr double kStiffHeight = 2.0;
constexpr double kSlenderHeight = 1.5;

double pivot_depth_mm(const Design& design) {
    const Tang& tang = design.own().tang;
    return tang.open_mm + thickness_mm(design.spring.thickness, tang.pivot_mm);
}

/// Higher by the pins' room, so that any design's pins lie in them.
double usual_height_mm(const Design& design, double height) {
    constexpr double room = 1.05;
    const double depth = pivot_depth_mm(design);
    const double usual = std::max(height * depth, depth + design.friction.pivot_pin_mm);
    const double least = least_liner_height_mm(design);
    return usual > least ? usual : room * least;
}

Frame usual_liners(const Design& design, LinerMetal metal, double thickness_mm, double height) {
    return {.liner_metal = metal,
            .liner_thickness_mm = thickness_mm,
            .liner_height_mm = usual_height_mm(design, height),
            .liner_modulus_mpa = {},
            .scale_thickness_mm = {},
            .scale_modulus_mpa = {},
            .seat_mm_per_n = {}};
}

std::optional<double> change(const std::optional<double>& from, const std::optional<double>& to) {
    return from && to ? std::optional(*to - *from) : std::nullopt;
}

template <class Change>
FrameEffect with(Solution& before, Change make) {
    Design changed = before.design();
    make(changed);
    return frame_effect(before, changed);
}

}  // namespace

FrameEffect frame_effect(const Design& design, const Design& changed) {
    Solution before(design);
    return frame_effect(before, changed);
}

FrameEffect frame_effect(Solution& before, const Design& changed) {
    Solution after(changed);
    FrameEffect effect{
        .pull_share = 0.0,
        .half_stop_mm = change(before.readings().half_stop_mm, after.readings().half_stop_mm),
        .closed_mm = change(before.readings().closed_mm, after.readings().closed_mm)};
    const auto from = peak_torque_nmm(before), to = peak_torque_nmm(after);
    if (from && to) effect.pull_share = *to / *from - 1.0;
    return effect;
}

Frame stiff_liners(const Design& design) {
    return usual_liners(design, LinerMetal::stainless, kStiffLinerMm, kStiffHeight);
}

Frame slender_liners(const Design& design) {
    return usual_liners(design, LinerMetal::brass, kSlenderLinerMm, kSlenderHeight);
}

std::vector<UsualEffect> usual_effects(const Design& design) {
    Solution solution(design);
    return usual_effects(solution);
}

std::vector<UsualEffect> usual_effects(Solution& solution) {
    const Design& design = solution.design();
    std::vector<UsualEffect> effects;
    const bool pinned = design.spring.support.kind == SupportKind::two_pins;
    const PinClearance& pins = design.spring.pin_clearance;
    if (pinned && !design.frame.stated()) {
        effects.push_back({.what = HeldBy::liners,
                           .least = with(solution, [](Design& d) { d.frame = stiff_liners(d); }),
                           .most = with(solution, [](Design& d) { d.frame = slender_liners(d); })});
    }
    if (pinned && pins.middle_mm == 0.0 && pins.rear_mm == 0.0) {
        effects.push_back({.what = HeldBy::pin_clearance,
                           .least = {},
                           .most = with(solution, [](Design& d) {
                               d.spring.pin_clearance = {kLoosePinMm, kLoosePinMm};
                           })});
    }
    if (design.own().tang.pivot_clearance_mm == 0.0) {
        effects.push_back(
            {.what = HeldBy::pivot_clearance, .least = {}, .most = with(solution, [](Design& d) {
                                                               d.own().tang.pivot_clearance_mm =
                                                                   kLoosePivotMm;
                                                           })});
    }
    return effects;
}

}  // namespace backspring
