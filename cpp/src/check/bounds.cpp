#include "backspring/check/bounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/design/steel_ends.hpp"

namespace backspring {
namespace {

// Share of the greatest that rounding may leave below nothing.
constexpr double kBelowNothing = 1e-12;
constexpr double kGreatestSpeed = 1e9;
constexpr double kLeastAngleDeg = -45.0, kGreatestAngleDeg = 225.0;

struct Sizes {
    double rear_mm, front_mm, thickest_mm;

    [[nodiscard]] double length_mm() const { return front_mm - rear_mm; }
};

Sizes sizes_of(const Design& design) {
    const SteelEnds ends = steel_ends(design);
    Sizes sizes{.rear_mm = ends.rear_mm, .front_mm = ends.front_mm, .thickest_mm = 0.0};
    for (const Station& s : design.spring.thickness) {
        sizes.rear_mm = std::min(sizes.rear_mm, s.x_mm);
        sizes.front_mm = std::max(sizes.front_mm, s.x_mm);
        sizes.thickest_mm = std::max(sizes.thickest_mm, s.thickness_mm);
    }
    return sizes;
}

ResultBounds from_nothing(double high) { return {-kBelowNothing * high, high}; }

}  // namespace

ResultBounds result_bounds(const Design& design, ResultKind kind) {
    const Spring& spring = design.spring;
    const Sizes sizes = sizes_of(design);
    const double modulus_mpa = spring.elastic.youngs_modulus_mpa;
    double widest_mm = spring.width_mm;
    for (const WidthStation& s : spring.widths) widest_mm = std::max(widest_mm, s.width_mm);
    const double force_n = modulus_mpa * widest_mm * sizes.thickest_mm;
    const double torque_nmm = force_n * sizes.length_mm();
    switch (kind) {
        case ResultKind::force:
            return from_nothing(force_n);
        case ResultKind::torque:
            return {-torque_nmm, torque_nmm};
        case ResultKind::effort:
        case ResultKind::energy:
            return from_nothing(torque_nmm);
        case ResultKind::stress:
            return from_nothing(modulus_mpa);
        case ResultKind::stiffness:
            return {0.0, modulus_mpa * sizes.length_mm()};
        case ResultKind::reading:
            return {-sizes.length_mm(), sizes.length_mm()};
        case ResultKind::station:
            return {sizes.rear_mm, sizes.front_mm};
        case ResultKind::angle:
            return {kLeastAngleDeg, kGreatestAngleDeg};
        case ResultKind::margin:
            return {0.0, std::numeric_limits<double>::max()};
        case ResultKind::speed:
            break;
    }
    return {0.0, kGreatestSpeed};
}

bool is_within(const ResultBounds& bounds, double value) {
    return std::isfinite(value) && value >= bounds.low && value <= bounds.high;
}

bool is_possible(const Design& design, ResultKind kind, double value) {
    return is_within(result_bounds(design, kind), value);
}

std::optional<double> if_possible(const Design& design,
                                  ResultKind kind,
                                  const std::optional<double>& value) {
    return value && is_possible(design, kind, *value) ? value : std::nullopt;
}

}  // namespace backspring
