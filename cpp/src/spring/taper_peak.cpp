#include "taper_peak.hpp"

#include <cmath>

#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

using Taper = StressProbe::Taper;

double rectangle_stress_per_moment(double width_mm, double thickness_mm) {
    return 6.0 / (width_mm * thickness_mm * thickness_mm);
}

/// Where 6 M/(b t^2) peaks on a straight taper of thickness and width whose moment vanishes in a
/// straight line a distance ahead of its start: b t + (zero - u) (b' t + 2 t' b) = 0.
std::optional<double> from_start_mm(const Taper& piece, double zero_mm) {
    const double length = piece.end.x_mm - piece.start.x_mm;
    const double t = piece.start.thickness_mm, b = piece.start_width_mm;
    const double t_rate = (piece.end.thickness_mm - t) / length;
    const double b_rate = (piece.end_width_mm - b) / length, both = b_rate * t_rate;
    const double none = b * t + zero_mm * (b_rate * t + 2.0 * t_rate * b);
    const double once = 3.0 * zero_mm * both - t_rate * b;
    const double root = std::sqrt(once * once + 8.0 * both * none);
    const double far = -0.5 * (once + std::copysign(root, once));
    const auto stress = [&](double u) {
        return (zero_mm - u) * rectangle_stress_per_moment(b + b_rate * u, t + t_rate * u);
    };
    std::optional<double> best;
    for (const double u : {none / far, -0.5 * far / both}) {
        if (!(u > 0.0 && u < length)) continue;
        if (!best || std::abs(stress(u)) > std::abs(stress(*best))) best = u;
    }
    return best;
}

}  // namespace

StressProbe::Taper detail::taper_of(const Stretch& stretch, double width_mm) {
    const double strong_mm = width_mm * stretch.cosine * stretch.cosine;
    return {.start = {stretch.start_mm, stretch.thickness_mm},
            .end = {stretch.end_mm, thickness_mm(stretch, stretch.end_mm)},
            .start_width_mm = strong_mm * stretch.width_share,
            .end_width_mm = strong_mm * width_share(stretch, stretch.end_mm)};
}

std::optional<StressProbe::Place> detail::taper_peak(const Taper& piece, double zero_mm) {
    const auto& [start, end, start_width, end_width] = piece;
    if (start_width != end_width) {
        const auto u = from_start_mm(piece, zero_mm - start.x_mm);
        if (!u) return std::nullopt;
        const double share = *u / (end.x_mm - start.x_mm);
        const double stress =
            rectangle_stress_per_moment(std::lerp(start_width, end_width, share),
                                        std::lerp(start.thickness_mm, end.thickness_mm, share));
        return StressProbe::Place{start.x_mm + *u, stress};
    }
    // There it has twice the thickness that the taper would have where the moment vanishes.
    const double taper = (end.thickness_mm - start.thickness_mm) / (end.x_mm - start.x_mm);
    if (taper == 0.0) return std::nullopt;
    const double at_zero = start.thickness_mm + taper * (zero_mm - start.x_mm);
    const double x = zero_mm + at_zero / taper;
    if (!(x > start.x_mm && x < end.x_mm)) return std::nullopt;
    return StressProbe::Place{x, rectangle_stress_per_moment(start_width, 2.0 * at_zero)};
}

}  // namespace backspring
