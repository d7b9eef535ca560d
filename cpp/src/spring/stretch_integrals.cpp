#include "stretch_integrals.hpp"

#include <array>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>

#include "net_sections.hpp"
#include "taper_series.hpp"

namespace backspring {
namespace {

// Coefficients of int_0^1 u^2 / (1 + z u)^3 du = sum (-z)^j (j + 1)(j + 2) / (2 (j + 3)).
constexpr Series kSecondMoment = [] {
    Series c{};
    for (int j = 0; j < kTerms; ++j) {
        c[static_cast<std::size_t>(j)] = (j + 1.0) * (j + 2.0) / (2.0 * (j + 3.0));
    }
    return c;
}();

/// int_0^1 u^2 / (1 + z u)^3 du and ln(1 + z) / z, each from the other where that is exact.
struct TaperFunctions {
    double second_moment;
    double log_ratio;
};

/// @param per_end  1/(1 + z)
TaperFunctions taper_functions(double z, double per_end) {
    if (std::abs(z) < kSmallTaper) {
        const double second = sum_of(kSecondMoment, z);
        return {second, z * z * second + (1.0 + 1.5 * z) * per_end * per_end};
    }
    // The difference of both wants the very same z in both.
    const double end = 1.0 + z, rest = (1.0 + 1.5 * z) / (end * end);
    const double log_ratio = std::log1p(z) / z;
    return {(log_ratio - rest) / (z * z), log_ratio};
}

/// On a stretch that neither leans nor is of another width than the spring.
BendingIntegrals plain(const Stretch& stretch, double h) {
    const double t0 = stretch.thickness_mm;
    const double per_t0 = 1.0 / t0;
    const double per_t1 = 1.0 / (t0 + stretch.taper * h);
    const double u = h * per_t0;
    const auto [second, log_ratio] = taper_functions(stretch.taper * u, t0 * per_t1);
    return {.a0 = 6.0 * u * per_t1 * (per_t0 + per_t1),
            .a1 = 6.0 * u * h * per_t1 * per_t1,
            .a2 = 12.0 * u * u * u * second,
            .shear = u * log_ratio};
}

BendingIntegrals whole(const Stretch& stretch, double h) {
    const BendingIntegrals straight = plain(stretch, h);
    if (stretch.cosine == 1.0 && stretch.width_share == 1.0) return straight;
    const double c = stretch.cosine * stretch.cosine;
    const double bending = 1.0 / (stretch.width_share * c * c);
    const double shear = (1.0 + stretch.axial_share) / stretch.width_share;
    return {.a0 = bending * straight.a0,
            .a1 = bending * straight.a1,
            .a2 = bending * straight.a2,
            .shear = shear * straight.shear};
}

/// A whole stretch whose width varies too: sections that need no look at a hole, told in place.
BendingIntegrals wedged(const Stretch& stretch, double h) {
    constexpr unsigned points = 30, count = points / 2;
    using Rule = boost::math::quadrature::gauss<double, points>;
    const auto& abscissa = Rule::abscissa();
    const auto& weights = Rule::weights();
    const double half = 0.5 * h, taper = stretch.taper, widening = stretch.width_taper;
    const double middle = stretch.thickness_mm + taper * half;
    const double wide = stretch.width_share + widening * half;
    std::array<double, points> s{}, rates{}, squares{};
    for (std::size_t i = 0; i < count; ++i) {
        const double away = half * abscissa[i], weight = half * weights[i];
        const double ahead = middle + taper * away, behind = middle - taper * away;
        s[2 * i] = half + away;
        s[2 * i + 1] = half - away;
        rates[2 * i] = weight / (ahead * (wide + widening * away));
        rates[2 * i + 1] = weight / (behind * (wide - widening * away));
        squares[2 * i] = 1.0 / (ahead * ahead);
        squares[2 * i + 1] = 1.0 / (behind * behind);
    }
    BendingIntegrals sum;
    for (std::size_t i = 0; i < s.size(); ++i) {
        const double bending = rates[i] * squares[i];
        sum.a0 += bending;
        sum.a1 += s[i] * bending;
        sum.a2 += s[i] * s[i] * bending;
        sum.shear += rates[i];
    }
    const double c = stretch.cosine * stretch.cosine, bending = 12.0 / (c * c);
    return {.a0 = bending * sum.a0,
            .a1 = bending * sum.a1,
            .a2 = bending * sum.a2,
            .shear = (1.0 + stretch.axial_share) * sum.shear};
}

constexpr int kAcrossHole = 30;
using AcrossHole = Eigen::Array<double, kAcrossHole, 1>;

/// Places of a rule across part of a hole by their angle from its centre, x = c + r sin phi, and
/// what of its radius each stands for.
struct HolePlaces {
    AcrossHole sine, cosine, weight;
};

HolePlaces places_between(double from_rad, double to_rad) {
    using Rule = boost::math::quadrature::gauss<double, kAcrossHole>;
    const double middle = 0.5 * (from_rad + to_rad), half = 0.5 * (to_rad - from_rad);
    const double sine = std::sin(middle), cosine = std::cos(middle);
    HolePlaces places;
    for (int i = 0; i < kAcrossHole; ++i) {
        const auto k = static_cast<std::size_t>(i / 2);
        const double away = (i % 2 == 0 ? half : -half) * Rule::abscissa()[k];
        const double across = std::sin(away), along = std::cos(away);
        places.sine[i] = sine * along + cosine * across;
        places.cosine[i] = cosine * along - sine * across;
        places.weight[i] = half * places.cosine[i] * Rule::weights()[k];
    }
    return places;
}

/// A spring is cut at the centre of a hole and at its edges: most often it is one half or the
/// other.
const HolePlaces& half_hole(bool ahead) {
    static const HolePlaces behind_center = places_between(-0.5 * std::numbers::pi, 0.0),
                            ahead_of_center = places_between(0.0, 0.5 * std::numbers::pi);
    return ahead ? ahead_of_center : behind_center;
}

/// Sines of the angles at which a stretch of a hole starts and ends.
struct HoleEnds {
    double from, to;

    HoleEnds(const Hole& hole, double from_mm, double to_mm)
        : from(sine(hole, from_mm)), to(sine(hole, to_mm)) {}

    [[nodiscard]] bool is_half() const {
        return (from == 0.0 && to == 1.0) || (from == -1.0 && to == 0.0);
    }

    /// An edge is an edge, whatever its station is rounded to.
    [[nodiscard]] static double sine(const Hole& hole, double x_mm) {
        constexpr double rounding = 1e-12;
        const double share = (x_mm - hole.center_mm) / (0.5 * hole.diameter_mm);
        return std::abs(share) > 1.0 - rounding ? std::copysign(1.0, share) : share;
    }
};

BendingIntegrals pierced_at(const Stretch& stretch, const HolePlaces& at) {
    const double radius = 0.5 * stretch.hole.diameter_mm;
    const AcrossHole s = (stretch.hole.center_mm - stretch.start_mm) + radius * at.sine;
    const NetSections<kAcrossHole> net(stretch, s, 2.0 * radius * at.cosine);
    const AcrossHole share = radius * at.weight / (stretch.width_share + stretch.width_taper * s);
    const AcrossHole bending = share / (stretch.cosine * net.inertia_mm3);
    return {.a0 = bending.sum(),
            .a1 = (s * bending).sum(),
            .a2 = (s * s * bending).sum(),
            .shear = stretch.cosine * (1.0 + stretch.axial_share) * (share / net.steel_mm).sum()};
}

BendingIntegrals pierced(const Stretch& stretch, double x_mm) {
    const HoleEnds ends(stretch.hole, stretch.start_mm, x_mm);
    if (ends.is_half()) return pierced_at(stretch, half_hole(ends.to == 1.0));
    return pierced_at(stretch, places_between(std::asin(ends.from), std::asin(ends.to)));
}

}  // namespace

BendingIntegrals detail::shape_integrals(const Stretch& stretch, double x_mm) {
    if (stretch.hole.diameter_mm > 0.0) return pierced(stretch, x_mm);
    const double h = x_mm - stretch.start_mm;
    return stretch.width_taper == 0.0 ? whole(stretch, h) : wedged(stretch, h);
}

}  // namespace backspring
