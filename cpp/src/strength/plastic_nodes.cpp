#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

#include "backspring/spring/stretches.hpp"
#include "backspring/strength/plastic_spring.hpp"

namespace backspring {
namespace {

constexpr double kPanelMm = 4.0;

}  // namespace

void PlasticSpring::add_stretches(const Spring& spring,
                                  double end_mm,
                                  double yield_mpa,
                                  const MomentLine* greatest) {
    const double end = std::max(spring.thickness.back().x_mm, end_mm);
    const auto add = [&](double from, double to) {
        for (const Stretch& stretch : cut_into_stretches(spring, from, to)) {
            add_stretch(stretch, spring.width_mm, yield_mpa, greatest);
        }
    };
    if (spring.support.kind == SupportKind::two_pins) {
        rear_pin_mm_ = spring.support.rear_pin_mm;
        add(-rear_pin_mm_, 0.0);
    }
    add(0.0, end);
    count_ = nodes_.size();
    watched_ = tapers_;
    find_foremost();
}

double PlasticSpring::share_behind(double x_mm) const {
    return x_mm < 0.0 ? 1.0 + x_mm / rear_pin_mm_ : 1.0;
}

void PlasticSpring::add_node(
    const Stretch& stretch, double width_mm, double yield_mpa, double x_mm, double share_mm) {
    const PlasticSection section = make_plastic_section(
        width_mm * width_share(stretch, x_mm), thickness_mm(stretch, x_mm) * stretch.cosine,
        elastic_.youngs_modulus_mpa, yield_mpa, chord_mm(stretch.hole, x_mm),
        stretch.hole.offset_mm);
    nodes_.push_back({.x_mm = x_mm,
                      .length_mm = share_mm / stretch.cosine,
                      .section = section,
                      .share_behind = share_behind(x_mm),
                      .elastic_nmm = section.yield_moment_nmm});
}

void PlasticSpring::add_stretch(const Stretch& stretch,
                                double width_mm,
                                double yield_mpa,
                                const MomentLine* greatest) {
    const double length = stretch.end_mm - stretch.start_mm;
    if (stretch.hole.diameter_mm <= 0.0 && stretch.width_taper == 0.0) {
        tapers_.push_back({.from_mm = stretch.start_mm,
                           .to_mm = stretch.end_mm,
                           .thickness_mm = stretch.thickness_mm * stretch.cosine,
                           .taper = stretch.taper * stretch.cosine,
                           .width_mm = width_mm * stretch.width_share,
                           .cosine = stretch.cosine,
                           .youngs_modulus_mpa = elastic_.youngs_modulus_mpa,
                           .yield_mpa = yield_mpa});
        return;
    }
    using Rule = boost::math::quadrature::gauss<double, 10>;
    const int panels = static_cast<int>(std::ceil(length / kPanelMm));
    // Close stations at both ends of a panel, x = a + l (3 u^2 - 2 u^3): curvature rises steeply
    // towards a hinge at an end, and a hole's chord like a root towards its rim.
    const auto add = [&](double start, double panel, double u, double weight) {
        const double x = start + panel * u * u * (3.0 - 2.0 * u);
        add_node(stretch, width_mm, yield_mpa, x, weight * panel * 6.0 * u * (1.0 - u));
    };
    const auto surely_elastic = [&](double start, double end) {
        constexpr double far = 0.8;
        if (!greatest) return false;
        double most = 0.0, least_mm3 = std::numeric_limits<double>::infinity();
        for (const double x : {start, end}) {
            const double depth = thickness_mm(stretch, x) * stretch.cosine;
            // The ligaments beside a hole bear more than one of them that is left alone.
            const double steel =
                depth - chord_mm(stretch.hole, x) - 2.0 * std::abs(stretch.hole.offset_mm);
            most = std::max(most, greatest->most_nmm(x) * share_behind(x));
            least_mm3 =
                std::min(least_mm3, width_mm * width_share(stretch, x) * steel * std::abs(steel));
        }
        return most < far * yield_mpa * least_mm3 / 6.0;
    };
    const std::size_t count = Rule::abscissa().size();
    for (int i = 0; i < panels; ++i) {
        const double start = stretch.start_mm + length * i / panels, panel = length / panels;
        // Of a panel that stays elastic its ends are enough, to tell where yielding ends.
        const std::size_t least = surely_elastic(start, start + panel) ? count - 1 : 0;
        for (std::size_t k = count; k-- > least;) {
            add(start, panel, 0.5 - 0.5 * Rule::abscissa()[k], 0.5 * Rule::weights()[k]);
        }
        for (std::size_t k = least; k < count; ++k) {
            add(start, panel, 0.5 + 0.5 * Rule::abscissa()[k], 0.5 * Rule::weights()[k]);
        }
    }
}

}  // namespace backspring
