#include "thinning.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

/// A section and its rates per mm taken off.
struct SectionRates {
    Section section;
    double area;     ///< dA/dr
    double inertia;  ///< dI/dr
    double back;     ///< d(centroid to back)/dr
    double belly;    ///< d(centroid to belly)/dr
};

SectionRates rates_of(double b, double t, double c, double e, double offset_rate) {
    const double left = t - c;
    const double by_thickness = b * (t * t / 4.0 + c * c * e * e / (left * left));
    const double by_offset = -2.0 * b * c * e * t / left;
    // ybar = -c e / (t - c): the net centroid from the mid-line.
    const double shift = -c * e / (left * left) - c / left * offset_rate;
    return {.section = make_section(b, t, c, e),
            .area = -b,
            .inertia = -by_thickness + offset_rate * by_offset,
            .back = -0.5 - shift,
            .belly = -0.5 + shift};
}

/// Rates per mm taken off square to the mid-line, which leans.
SectionRates section_rates_at(const Spring& spring,
                              double thickness,
                              double cosine,
                              const Hole& hole,
                              double x,
                              double offset_rate) {
    return rates_of(width_at_mm(spring, x), thickness * cosine, chord_mm(hole, x), hole.offset_mm,
                    offset_rate);
}

Hole hole_at(const Spring& spring, double x_mm) {
    for (const Hole& hole : spring.holes) {
        if (chord_mm(hole, x_mm) > 0.0) return hole;
    }
    return {};
}

/// Of a leaning mid-line: what is taken off along y is thinner by the cosine, and as much longer.
Thinned thinned(const Spring& spring, const SectionRates& r, double cosine) {
    const double area = r.section.area_mm2, inertia = r.section.inertia_mm4;
    const double modulus = spring.elastic.youngs_modulus_mpa;
    const double kappa_g = kShearFactor * shear_modulus_mpa(spring.elastic);
    const double square = cosine * cosine;
    const double along = square + (1.0 - square) * kappa_g / modulus;
    return {.bending = -r.inertia / (inertia * inertia * modulus),
            .shear = -r.area / (area * area * kappa_g) * along};
}

/// Gauss-Legendre points of a part of a stretch; across a hole in the angle round it.
template <unsigned points, class Visit>
void integrate(double from, double to, Visit visit) {
    using Rule = boost::math::quadrature::gauss<double, points>;
    const double middle = 0.5 * (from + to), half = 0.5 * (to - from);
    for (std::size_t i = 0; i < Rule::abscissa().size(); ++i) {
        const double away = half * Rule::abscissa()[i], weight = half * Rule::weights()[i];
        visit(middle + away, weight);
        if (away != 0.0) visit(middle - away, weight);
    }
}

template <class Visit>
void integrate(const Stretch& stretch, double from_mm, double to_mm, Visit visit) {
    if (stretch.hole.diameter_mm == 0.0) {
        integrate<7>(from_mm, to_mm, visit);
        return;
    }
    const double radius = 0.5 * stretch.hole.diameter_mm, center = stretch.hole.center_mm;
    const auto angle = [&](double x) {
        return std::asin(std::clamp((x - center) / radius, -1.0, 1.0));
    };
    integrate<20>(angle(from_mm), angle(to_mm), [&](double phi, double weight) {
        visit(center + radius * std::sin(phi), weight * radius * std::cos(phi));
    });
}

}  // namespace

Thinned detail::thinned_at(const Spring& spring, double x_mm, double offset_rate) {
    const double t = thickness_mm(spring.thickness, x_mm), cosine = lean_cosine(spring, x_mm);
    return thinned(spring,
                   section_rates_at(spring, t, cosine, hole_at(spring, x_mm), x_mm, offset_rate),
                   cosine);
}

double detail::stress_thinned_at(const Spring& spring, double x_mm, double offset_rate) {
    constexpr double alike = 1e-9;
    const double t = thickness_mm(spring.thickness, x_mm), cosine = lean_cosine(spring, x_mm);
    const SectionRates r =
        section_rates_at(spring, t, cosine, hole_at(spring, x_mm), x_mm, offset_rate);
    const Section& s = r.section;
    const auto rate = [&](double fibre, double fibre_rate) {
        return cosine * (fibre_rate - fibre * r.inertia / s.inertia_mm4) / s.inertia_mm4;
    };
    const double back = rate(s.back_mm, r.back), belly = rate(s.belly_mm, r.belly);
    if (std::abs(s.back_mm - s.belly_mm) < alike) return std::max(back, belly);
    return s.back_mm > s.belly_mm ? back : belly;
}

void detail::visit_thinned(const Spring& spring,
                           std::vector<double> cuts_mm,
                           double offset_rate,
                           const std::function<void(double, double, Thinned)>& visit) {
    std::sort(cuts_mm.begin(), cuts_mm.end());
    for (const Stretch& stretch : cut_into_stretches(spring, cuts_mm.front(), cuts_mm.back())) {
        const auto part = [&](double from, double to) {
            integrate(stretch, from, to, [&](double x, double length) {
                const double t = thickness_mm(stretch, x);
                const SectionRates rates =
                    section_rates_at(spring, t, stretch.cosine, stretch.hole, x, offset_rate);
                visit(x, length, thinned(spring, rates, stretch.cosine));
            });
        };
        double from = stretch.start_mm;
        for (const double cut : cuts_mm) {
            if (cut <= from || cut >= stretch.end_mm) continue;
            part(from, cut);
            from = cut;
        }
        part(from, stretch.end_mm);
    }
}

}  // namespace backspring
