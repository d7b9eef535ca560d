#include "stretch_integrals.hpp"

#include <algorithm>
#include <array>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>

#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

// Below this relative taper the closed form loses digits to cancellation; the series does not.
constexpr double kSmallTaper = 0.1;
constexpr int kTerms = 20;

using Series = std::array<double, kTerms>;

// Coefficients of int_0^1 u^2 / (1 + z u)^3 du = sum (-z)^j (j + 1)(j + 2) / (2 (j + 3)).
constexpr Series kSecondMoment = [] {
    Series c{};
    for (int j = 0; j < kTerms; ++j) {
        c[static_cast<std::size_t>(j)] = (j + 1.0) * (j + 2.0) / (2.0 * (j + 3.0));
    }
    return c;
}();

// And of int_0^1 (1 - u)^2 / (1 + z u)^3 du = sum (-z)^j / (j + 3).
constexpr Series kFromEnd = [] {
    Series c{};
    for (int j = 0; j < kTerms; ++j) c[static_cast<std::size_t>(j)] = 1.0 / (j + 3.0);
    return c;
}();

/// The first terms of a series in -z, in four short chains instead of a long one.
template <std::size_t terms>
double first_terms(const Series& series, double z) {
    const double square = z * z, fourth = square * square;
    double even = 0.0, odd = 0.0, even2 = 0.0, odd2 = 0.0;
    for (std::size_t j = terms; j > 0; j -= 4) {
        even = even * fourth + series[j - 4];
        odd = odd * fourth + series[j - 3];
        even2 = even2 * fourth + series[j - 2];
        odd2 = odd2 * fourth + series[j - 1];
    }
    return (even + square * even2) - z * (odd + square * odd2);
}

double sum_of(const Series& series, double z) {
    // What follows is below rounding: j/2 z^j at most of the first term left out.
    const double size = std::abs(z);
    if (size < 0.005) return first_terms<8>(series, z);
    return size < 0.03 ? first_terms<12>(series, z) : first_terms<kTerms>(series, z);
}

/// int_0^1 (1 - u)^2 / (1 + z u)^3 du = (ln(1 + z) - z + z^2/2)/z^3.
double from_end(double z) {
    if (std::abs(z) < kSmallTaper) return sum_of(kFromEnd, z);
    return (std::log1p(z) - z + 0.5 * z * z) / (z * z * z);
}

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

/// Places round a hole, by their angle from square to the spring.
struct RoundHole {
    static constexpr unsigned kPoints = 30;
    std::array<double, kPoints> sines{}, cosines{}, weights{};

    RoundHole(double from_rad, double to_rad) {
        using Rule = boost::math::quadrature::gauss<double, kPoints>;
        const double middle = 0.5 * (from_rad + to_rad), half = 0.5 * (to_rad - from_rad);
        for (std::size_t i = 0; i < Rule::abscissa().size(); ++i) {
            const double away = half * Rule::abscissa()[i], weight = half * Rule::weights()[i];
            set(2 * i, middle + away, weight);
            set(2 * i + 1, middle - away, weight);
        }
    }

  private:
    void set(std::size_t i, double angle_rad, double weight) {
        sines[i] = std::sin(angle_rad), cosines[i] = std::cos(angle_rad), weights[i] = weight;
    }
};

BendingIntegrals pierced_at(const Stretch& stretch, const RoundHole& places) {
    const Hole& hole = stretch.hole;
    const double radius = 0.5 * hole.diameter_mm;
    const double per_depth = stretch.cosine * (1.0 + stretch.axial_share);
    BendingIntegrals sum;
    for (std::size_t i = 0; i < RoundHole::kPoints; ++i) {
        const double x = hole.center_mm + radius * places.sines[i];
        const double chord = hole.diameter_mm * places.cosines[i];
        const double length = 0.5 * chord * places.weights[i];
        const double thick = thickness_mm(stretch, x) * stretch.cosine;
        const Section net = make_section(1.0, thick, chord, hole.offset_mm);
        const double share = width_share(stretch, x), s = x - stretch.start_mm;
        const double bending = length / (net.inertia_mm4 * share * stretch.cosine);
        sum.a0 += bending;
        sum.a1 += s * bending;
        sum.a2 += s * s * bending;
        sum.shear += length * per_depth / ((thick - chord) * share);
    }
    return sum;
}

/// Between two places round the hole; half of it at once is what is nearly always asked for.
BendingIntegrals pierced(const Stretch& stretch, double x_mm) {
    constexpr double quarter = 0.5 * std::numbers::pi;
    const double center = stretch.hole.center_mm, radius = 0.5 * stretch.hole.diameter_mm;
    // So near to the wall the angle is that of the wall: the rest is rounding.
    const double rounding = 1e-14 * (std::abs(center) + radius);
    const bool from_wall = std::abs(stretch.start_mm - (center - radius)) <= rounding;
    const bool to_wall = std::abs(x_mm - (center + radius)) <= rounding;
    if (from_wall && x_mm == center) {
        static const RoundHole behind(-quarter, 0.0);
        return pierced_at(stretch, behind);
    }
    if (to_wall && stretch.start_mm == center) {
        static const RoundHole ahead(0.0, quarter);
        return pierced_at(stretch, ahead);
    }
    const auto angle = [&](double x) {
        return std::asin(std::clamp((x - center) / radius, -1.0, 1.0));
    };
    return pierced_at(stretch, RoundHole(angle(stretch.start_mm), angle(x_mm)));
}

}  // namespace

BendingIntegrals detail::shape_integrals(const Stretch& stretch, double x_mm) {
    if (stretch.hole.diameter_mm > 0.0) return pierced(stretch, x_mm);
    const double h = x_mm - stretch.start_mm;
    return stretch.width_taper == 0.0 ? whole(stretch, h) : wedged(stretch, h);
}

OwnCompliance detail::own_of_taper(const Stretch& stretch,
                                   double x_mm,
                                   double bending_factor,
                                   double shear_factor) {
    const double t0 = stretch.thickness_mm, h = x_mm - stretch.start_mm;
    const double per_t0 = 1.0 / t0, per_t1 = 1.0 / (t0 + stretch.taper * h);
    const double u = h * per_t0, z = stretch.taper * u, bent = from_end(z);
    double bending = bending_factor, shear = shear_factor;
    if (stretch.cosine != 1.0 || stretch.width_share != 1.0) {
        const double c = stretch.cosine * stretch.cosine;
        bending /= stretch.width_share * c * c;
        shear *= (1.0 + stretch.axial_share) / stretch.width_share;
    }
    const double log_ratio = 1.0 + z * (z * bent - 0.5);
    const double half_slope = 0.5 * shear * per_t1;
    return {.mm_per_n = bending * u * u * u * bent + shear * u * log_ratio,
            .rad_per_n = 0.5 * bending * u * u * per_t1 + half_slope,
            .rad_per_nmm = 0.5 * bending * u * per_t1 * (per_t0 + per_t1) -
                           half_slope * stretch.taper * per_t1,
            .from_mm = stretch.start_mm,
            .to_mm = stretch.end_mm};
}

}  // namespace backspring
