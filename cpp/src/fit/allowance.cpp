#include "backspring/fit/allowance.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/check/solution.hpp"
#include "backspring/core/require.hpp"
#include "backspring/grind/grind.hpp"
#include "face_solver.hpp"
#include "fitted.hpp"

namespace backspring {
namespace {

constexpr double kFittedMm = 1e-9;
constexpr int kMostFittings = 30;

/// Whether the kick carries some of the closed blade.
bool kick_bears(const Design& design) {
    if (!design.own().tang.kick) return false;
    Solution solution(design);
    const auto& closed = solution.rests().closed;
    return closed &&
           std::ranges::any_of(closed->all(), [](const Touch& touch) { return touch.part.kick; });
}

void require_target(double target_mm) {
    Requirements rules;
    rules.in_range("target", target_mm, -1.0, 1.0, "mm");
    rules.throw_if_any();
}

Allowance left_by(const Design& done, double target_mm, const FitUnknowns& unknowns) {
    const Pair left = readings_of(done, {}, unknowns, FitState::unloaded);
    return {.target_mm = target_mm,
            .half_stop_mm = left.half_stop_mm,
            .closed_mm = *left.closed_mm,
            .tang = done.own().tang};
}

}  // namespace

Design detail::fitted(const Design& design, double target_mm, const FitUnknowns& unknowns) {
    FaceQuestion question{.design = design,
                          .unknowns = unknowns,
                          .which = Wanted::lowest,
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
    require_target(target_mm);
    return left_by(fitted(design, target_mm, unknowns), target_mm, unknowns);
}

std::vector<Allowance> allowances(const Design& design, double target_mm) {
    require_target(target_mm);
    Design done = design;
    double moved = 1.0;
    for (int turn = 0; moved > kFittedMm && turn < kMostFittings; ++turn) {
        moved = 0.0;
        for (std::size_t i = 0; i < design.blades.size(); ++i) {
            const Tang tang = fitted(seen_from(done, i), target_mm, {}).own().tang;
            moved = std::max(moved, std::abs(tang.closed_mm - done.blades[i].tang.closed_mm));
            done.blades[i].tang = tang;
        }
    }
    std::vector<Allowance> all;
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        all.push_back(left_by(seen_from(done, i), target_mm, {}));
    }
    return all;
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
