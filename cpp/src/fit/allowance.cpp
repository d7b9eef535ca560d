#include "backspring/fit/allowance.hpp"

#include "backspring/check/solution.hpp"
#include "backspring/core/require.hpp"
#include "backspring/grind/grind.hpp"
#include "face_solver.hpp"
#include "fitted.hpp"

namespace backspring {
namespace {

/// Whether the kick carries some of the closed blade.
bool kick_bears(const Design& design) {
    if (!design.own().tang.kick) return false;
    Solution solution(design);
    const auto& closed = solution.rests().closed;
    // Closed, the kick stands behind the pivot; the closed face alone bears close below it.
    return closed && closed->count > 0 &&
           closed->touches[0].x_mm <
               design.own().tang.pivot_mm - 0.5 * design.own().tang.kick->distance_mm;
}

}  // namespace

Design detail::fitted(const Design& design, double target_mm, const FitUnknowns& unknowns) {
    FaceQuestion question{.design = design,
                          .unknowns = unknowns,
                          .state = FitState::loaded,
                          .wanted = {.half_stop_mm = std::nullopt, .closed_mm = target_mm},
                          .closed = kClosedSide,
                          .already = {}};
    if (design.own().tang.half_stop_mm) question.wanted.half_stop_mm = target_mm;
    if (kick_bears(design)) {
        question.closed = kKick;
        try {
            const auto [half, nose] = solve_faces(question);
            if (nose < design.own().tang.kick->height_mm) {
                return take_off(design, sum(along(kHalfStop, half), along(kKick, nose)));
            }
        } catch (const NoConvergence&) {
            // No nose is low enough: the closed face has to give way with it.
        }
        question.closed = kClosedSide;
    }
    const auto [half, closed] = solve_faces(question);
    return take_off(design, sum(along(kHalfStop, half), along(question.closed, closed)));
}

Allowance allowance(const Design& design, double target_mm, const FitUnknowns& unknowns) {
    Requirements rules;
    rules.in_range("target", target_mm, -1.0, 1.0, "mm");
    rules.throw_if_any();
    const Design done = fitted(design, target_mm, unknowns);
    const Pair left = readings_of(done, {}, unknowns, FitState::unloaded);
    return {.target_mm = target_mm,
            .half_stop_mm = left.half_stop_mm,
            .closed_mm = *left.closed_mm,
            .tang = done.own().tang};
}

BackGrindReadings readings_after_back_grind(const Design& design,
                                            double depth_mm,
                                            double target_mm) {
    const Design thinner =
        grind(design, {.face = GrindFace::back, .depth_mm = depth_mm, .region = std::nullopt});
    return {.before = fit_readings(design),
            .after = fit_readings(thinner),
            .allowance_before = allowance(design, target_mm),
            .allowance_after = allowance(thinner, target_mm)};
}

}  // namespace backspring
