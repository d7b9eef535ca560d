#include "backspring/fit/levers.hpp"

#include <array>

#include "backspring/check/closed_blade.hpp"
#include "backspring/check/solution.hpp"
#include "backspring/fit/fit_model.hpp"
#include "backspring/grind/grind.hpp"

namespace backspring {
namespace {

constexpr double kLeverHairMm = 0.005;

/// The columns of the table, in order.
using LeverFigures = std::array<std::optional<double>, 6>;

/// A tip that moves is one point of steel, whatever is ground behind the pivot.
LeverFigures lever_figures(const Design& design, const std::optional<BladePoint>& tip) {
    Solution solution(design);
    LeverFigures figures;
    figures[0] = solution.readings().half_stop_mm;
    figures[1] = solution.readings().closed_mm;
    if (const auto& closed = solution.rests().closed) {
        if (tip) figures[2] = height_in_handle_mm(*tip, closed->blade_angle_deg);
        figures[3] = closed_blade(design, solution.joint(), *closed).edge_gap_mm;
    }
    figures[4] = peak_pull_n(solution);
    if (const auto margin = yield_margin(solution)) figures[5] = margin->value;
    return figures;
}

bool on_spring(LeverFace face) { return face == LeverFace::back || face == LeverFace::belly; }

Design ground(const Design& design, LeverFace face, double depth_mm) {
    if (on_spring(face)) {
        const GrindFace side = face == LeverFace::back ? GrindFace::back : GrindFace::belly;
        return grind(design, {.face = side, .depth_mm = depth_mm, .region = std::nullopt});
    }
    FaceDepths depths;
    if (face == LeverFace::half_stop) depths.half_stop_mm = depth_mm;
    if (face == LeverFace::closed) depths.closed_mm = depth_mm;
    if (face == LeverFace::kick) depths.kick_mm = depth_mm;
    if (face == LeverFace::open) depths.open_mm = depth_mm;
    return take_off(design, depths);
}

/// Figures with a depth off a face; all none where no design is left.
LeverFigures with_off(const Design& design,
                      LeverFace face,
                      double depth_mm,
                      const std::optional<BladePoint>& tip) {
    if (depth_mm < 0.0 && on_spring(face)) return {};
    try {
        return lever_figures(ground(design, face, depth_mm), tip);
    } catch (const Error&) {
        return {};
    }
}

/// Slope per mm off from values at none, one, two steps off and one on.
std::optional<double> slope(const std::optional<double>& none,
                            const std::optional<double>& one,
                            const std::optional<double>& two,
                            const std::optional<double>& put_on) {
    if (one && put_on) return (*one - *put_on) / (2.0 * kLeverHairMm);
    if (!none || !one) return std::nullopt;
    if (!two) return (*one - *none) / kLeverHairMm;
    return (4.0 * *one - *two - 3.0 * *none) / (2.0 * kLeverHairMm);
}

bool has_face(const Design& design, LeverFace face) {
    if (face == LeverFace::half_stop) return design.own().tang.half_stop_mm.has_value();
    if (face == LeverFace::kick) return design.own().tang.kick.has_value();
    return true;
}

}  // namespace

std::string name_of(LeverFace face) {
    static constexpr std::array kNames{"half_stop", "closed", "kick", "open", "back", "belly"};
    return kNames.at(static_cast<std::size_t>(face));
}

std::vector<Lever> levers(const Design& design) {
    if (std::vector<Fault> broken = faults(design); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    const auto tip = blade_tip(design);
    const LeverFigures none = lever_figures(design, tip);
    std::vector<Lever> rows;
    for (const LeverFace face : {LeverFace::half_stop, LeverFace::closed, LeverFace::kick,
                                 LeverFace::open, LeverFace::back, LeverFace::belly}) {
        if (!has_face(design, face)) continue;
        const LeverFigures put_on = with_off(design, face, -kLeverHairMm, tip);
        const LeverFigures one = with_off(design, face, kLeverHairMm, tip);
        const LeverFigures two = with_off(design, face, 2.0 * kLeverHairMm, tip);
        LeverFigures change;
        for (std::size_t i = 0; i < change.size(); ++i) {
            if (const auto rate = slope(none[i], one[i], two[i], put_on[i])) {
                change[i] = kLeverDepthMm * *rate;
            }
        }
        rows.push_back({.face = face,
                        .half_stop_mm = change[0],
                        .closed_mm = change[1],
                        .tip_mm = change[2],
                        .edge_gap_mm = change[3],
                        .peak_pull_n = change[4],
                        .yield_margin = change[5]});
    }
    return rows;
}

}  // namespace backspring
