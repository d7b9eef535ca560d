#include "backspring/strength/plastic_spring.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

#include "backspring/core/root.hpp"
#include "backspring/spring/stretches.hpp"
#include "hinge.hpp"

namespace backspring {
namespace {

constexpr double kPanelMm = 4.0;
}  // namespace

PlasticSpring::PlasticSpring(const Spring& spring, double end_mm, double yield_mpa)
    : PlasticSpring(spring, end_mm, make_flexibility(spring), yield_mpa) {}

PlasticSpring::PlasticSpring(const Spring& spring,
                             double end_mm,
                             Flexibility flexibility,
                             double yield_mpa)
    : flexibility_(std::move(flexibility)), elastic_(spring.elastic) {
    const double end = std::max(spring.thickness.back().x_mm, end_mm);
    const auto add = [&](double from, double to) {
        for (const Stretch& stretch : cut_into_stretches(spring, from, to)) {
            add_stretch(stretch, spring.width_mm, yield_mpa);
        }
    };
    if (spring.support.kind == SupportKind::two_pins) {
        rear_pin_mm_ = spring.support.rear_pin_mm;
        add(-rear_pin_mm_, 0.0);
    }
    add(0.0, end);
    count_ = nodes_.size();
}

PlasticSpring PlasticSpring::with_yield(double yield_mpa) const {
    PlasticSpring other = *this;
    other.first_ = 0;
    other.count_ = nodes_.size();
    for (Node& node : other.nodes_) {
        const double share = yield_mpa / node.section.yield_mpa;
        node.borne_nmm = node.residual_per_mm = 0.0;
        node.section.yield_mpa = yield_mpa;
        node.section.yield_moment_nmm *= share;
        node.section.plastic_moment_nmm *= share;
        node.section.yield_curvature_per_mm *= share;
    }
    return other;
}

void PlasticSpring::leave_aside(const MomentLine& greatest) {
    const auto can_yield = [&](const Node& node) {
        const double x = node.x_mm;
        const double ahead = std::clamp(x / greatest.ahead_mm, 0.0, 1.0);
        const double most =
            std::lerp(greatest.root_nmm, greatest.ahead_nmm, ahead) * node.share_behind;
        return most > node.section.yield_moment_nmm;
    };
    const auto first = std::find_if(nodes_.begin(), nodes_.end(), can_yield);
    const auto last = std::find_if(nodes_.rbegin(), nodes_.rend(), can_yield).base();
    first_ = static_cast<std::size_t>(first - nodes_.begin());
    count_ = first < last ? static_cast<std::size_t>(last - first) : 0;
}

std::span<const PlasticSpring::Node> PlasticSpring::watched() const {
    return std::span(nodes_).subspan(first_, count_);
}

void PlasticSpring::add_stretch(const Stretch& stretch, double width_mm, double yield_mpa) {
    using Rule = boost::math::quadrature::gauss<double, 10>;
    const double length = stretch.end_mm - stretch.start_mm;
    const int panels = static_cast<int>(std::ceil(length / kPanelMm));
    // Close stations at both ends of a panel, x = a + l (3 u^2 - 2 u^3): curvature rises steeply
    // towards a hinge at an end, and a hole's chord like a root towards its rim.
    const auto add = [&](double start, double panel, double u, double weight) {
        const double x = start + panel * u * u * (3.0 - 2.0 * u);
        nodes_.push_back(
            {.x_mm = x,
             .length_mm = weight * panel * 6.0 * u * (1.0 - u) / stretch.cosine,
             .section = make_plastic_section(width_mm * width_share(stretch, x),
                                             thickness_mm(stretch, x) * stretch.cosine,
                                             elastic_.youngs_modulus_mpa, yield_mpa,
                                             chord_mm(stretch.hole, x), stretch.hole.offset_mm),
             .share_behind = x < 0.0 ? 1.0 + x / rear_pin_mm_ : 1.0});
    };
    const auto count = Rule::abscissa().size();
    for (int i = 0; i < panels; ++i) {
        const double start = stretch.start_mm + length * i / panels, panel = length / panels;
        for (std::size_t k = count; k-- > 0;) {
            add(start, panel, 0.5 - 0.5 * Rule::abscissa()[k], 0.5 * Rule::weights()[k]);
        }
        for (std::size_t k = 0; k < count; ++k) {
            add(start, panel, 0.5 + 0.5 * Rule::abscissa()[k], 0.5 * Rule::weights()[k]);
        }
    }
}

double PlasticSpring::unit_moment_mm(const Node& node, double at_mm) const {
    return node.x_mm < 0.0 ? at_mm * node.share_behind : std::max(at_mm - node.x_mm, 0.0);
}

PlasticSpring::Moments::Moments(std::span<const Load> all) : loads(all) {
    for (const Load& load : loads) {
        force_n += load.force_n;
        root_nmm += load.force_n * load.x_mm;
        nearest_mm = std::min(nearest_mm, load.x_mm);
    }
}

double PlasticSpring::residual_after(const Node& node, double moment_nmm) const {
    if (moment_nmm <= node.borne_nmm) return node.residual_per_mm;
    if (moment_nmm <= node.section.yield_moment_nmm) return 0.0;
    return residual_of(node.section, moment_nmm).per_mm;
}

double PlasticSpring::set_mm(std::span<const Load> loads, double at_mm) const {
    const Moments moments(loads);
    double sum = 0.0;
    for (const Node& node : watched()) {
        const double residual = residual_after(node, moments.at(node));
        if (residual == 0.0) continue;
        sum += node.length_mm * residual * unit_moment_mm(node, at_mm);
    }
    return sum;
}

double PlasticSpring::movement_mm(std::span<const Load> loads, double at_mm) const {
    double sum = set_mm(loads, at_mm);
    for (const Load& load : loads) {
        sum += load.force_n * deflection_per_force(flexibility_, at_mm, load.x_mm);
    }
    return sum;
}

double PlasticSpring::beyond_elastic(std::span<const Load> loads) const {
    const Moments moments(loads);
    double most = 0.0, borne = 1.0;
    for (const Node& node : watched()) {
        const double elastic = std::max(node.section.yield_moment_nmm, node.borne_nmm);
        const double moment = moments.at(node);
        if (moment * borne > most * elastic) most = moment, borne = elastic;
    }
    return most / borne;
}

bool PlasticSpring::bears(std::span<const Load> loads) const {
    const Moments moments(loads);
    return std::all_of(nodes_.begin(), nodes_.end(), [&](const Node& node) {
        return moments.at(node) < kHingeShare * node.section.plastic_moment_nmm;
    });
}

double PlasticSpring::force_n(const Hold& hold, const Load& other) const {
    const auto short_of = [&](double force) {
        const Load loads[] = {{hold.x_mm, force}, other};
        return hold.rise_mm - movement_mm(loads, hold.x_mm);
    };
    const double none = short_of(0.0);
    if (none <= 0.0) return 0.0;
    const double own = deflection_per_force(flexibility_, hold.x_mm, hold.x_mm);
    const double elastic = none / own;
    return find_root(short_of, 0.0, elastic, none, std::min(short_of(elastic), 0.0));
}

std::vector<Load> PlasticSpring::forces(std::span<const Hold> holds) const {
    const Hold& first = holds.front();
    const Load nothing{first.x_mm, 0.0};
    if (holds.size() == 1) return {{first.x_mm, force_n(first, nothing)}};
    const Hold& second = holds[1];
    const auto both = [&](double force) {
        const Load other{second.x_mm, force};
        return std::vector<Load>{{first.x_mm, force_n(first, other)}, other};
    };
    const auto short_of = [&](double force) {
        return second.rise_mm - movement_mm(both(force), second.x_mm);
    };
    const double none = short_of(0.0);
    if (none <= 0.0) return both(0.0);
    // Alone the second force is largest; the first, if it bears, only takes from it.
    const double alone = force_n(second, nothing);
    return both(find_root(short_of, 0.0, alone, none, std::min(short_of(alone), 0.0)));
}

FaceShift PlasticSpring::shift_after(std::span<const Load> loads,
                                     std::span<FaceShift> per_n) const {
    const Moments moments(loads);
    FaceShift shift;
    std::ranges::fill(per_n, FaceShift{});
    const auto add = [](FaceShift& to, const Node& node, double turn) {
        to.slope += turn * node.share_behind;
        if (node.x_mm > 0.0) to.height_mm -= turn * node.x_mm;
    };
    for (const Node& node : watched()) {
        const double moment = moments.at(node);
        const bool further = moment > std::max(node.borne_nmm, node.section.yield_moment_nmm);
        const Residual residual =
            further ? residual_of(node.section, moment) : Residual{node.residual_per_mm, 0.0};
        if (residual.per_mm == 0.0) continue;
        add(shift, node, node.length_mm * residual.per_mm);
        if (!further) continue;
        for (std::size_t i = 0; i < per_n.size(); ++i) {
            const double turn = node.length_mm * residual.per_nmm2;
            add(per_n[i], node, turn * unit_moment_mm(node, loads[i].x_mm));
        }
    }
    return shift;
}

void PlasticSpring::bend(std::span<const Load> loads) {
    const Moments moments(loads);
    for (Node& node : nodes_) {
        const double moment = moments.at(node);
        if (moment <= node.borne_nmm) continue;
        node.residual_per_mm = residual_after(node, moment);
        node.borne_nmm = moment;
    }
}

}  // namespace backspring
