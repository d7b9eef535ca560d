#include "backspring/strength/plastic_spring.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/root.hpp"
#include "hinge.hpp"

namespace backspring {
PlasticSpring::PlasticSpring(const Spring& spring, double end_mm, double yield_mpa)
    : flexibility_(make_flexibility(spring)), elastic_(spring.elastic) {
    add_stretches(spring, end_mm, yield_mpa, nullptr);
}

PlasticSpring::PlasticSpring(const Spring& spring,
                             double end_mm,
                             Flexibility flexibility,
                             double yield_mpa,
                             const MomentLine& greatest)
    : flexibility_(std::move(flexibility)), elastic_(spring.elastic) {
    add_stretches(spring, end_mm, yield_mpa, &greatest);
}

PlasticSpring PlasticSpring::with_yield(double yield_mpa) const {
    PlasticSpring other = *this;
    other.first_ = 0;
    other.count_ = nodes_.size();
    other.shift_ = other.shift_of_nodes_ = {};
    other.borne_ = {};
    for (PlasticTaper& taper : other.tapers_) taper.yield_mpa = yield_mpa;
    other.watched_ = other.tapers_;
    for (Node& node : other.nodes_) {
        const double share = yield_mpa / node.section.yield_mpa;
        node.borne_nmm = node.bent_nmm = node.residual_per_mm = 0.0;
        node.section.yield_mpa = yield_mpa;
        node.section.yield_moment_nmm *= share;
        node.section.plastic_moment_nmm *= share;
        node.section.yield_curvature_per_mm *= share;
        node.elastic_nmm = node.section.yield_moment_nmm;
    }
    return other;
}

void PlasticSpring::leave_aside(const MomentLine& greatest) {
    const auto can_yield = [&](const Node& node) {
        return greatest.most_nmm(node.x_mm) * node.share_behind > node.section.yield_moment_nmm;
    };
    const auto first = std::find_if(nodes_.begin(), nodes_.end(), can_yield);
    const auto last = std::find_if(nodes_.rbegin(), nodes_.rend(), can_yield).base();
    first_ = static_cast<std::size_t>(first - nodes_.begin());
    count_ = first < last ? static_cast<std::size_t>(last - first) : 0;
    std::erase_if(watched_, [&](const PlasticTaper& taper) {
        const double from = greatest.most_nmm(taper.from_mm), to = greatest.most_nmm(taper.to_mm);
        const bool thins = taper.taper < 0.0;
        return std::max(from, to) < taper.yield_moment_nmm(thins ? taper.to_mm : taper.from_mm);
    });
    find_foremost();
}

std::span<const PlasticSpring::Node> PlasticSpring::watched() const {
    return std::span(nodes_).subspan(first_, count_);
}

double PlasticSpring::moment_nmm(std::span<const Load> loads, const Node& node) {
    double sum = 0.0;
    for (const Load& load : loads) sum += load.force_n * unit_moment_mm(node, load.x_mm);
    return sum;
}

PlasticSpring::Greatest PlasticSpring::greatest_with(std::span<const MomentPart> moments) const {
    Greatest most;
    most.ahead.reserve(borne_.ahead.size() + moments.size());
    most.ahead = borne_.ahead;
    most.ahead.insert(most.ahead.end(), moments.begin(), moments.end());
    keep_greatest(most.ahead);
    most.behind = borne_.behind;
    for (const MomentPart& part : moments) {
        const double root = part.moment.root_nmm;
        if (rear_pin_mm_ <= 0.0 || root <= most.behind.moment.root_nmm) continue;
        most.behind = {.moment = {root, -root / rear_pin_mm_}, .nearest_mm = 0.0};
    }
    return most;
}

double PlasticSpring::residual_after(const Node& node, double moment_nmm) const {
    if (moment_nmm <= node.borne_nmm) return node.residual_per_mm;
    if (moment_nmm <= node.section.yield_moment_nmm) return 0.0;
    return residual_of(node.section, moment_nmm).per_mm;
}

double PlasticSpring::set_mm(std::span<const Load> loads, double at_mm) const {
    double sum = 0.0;
    for (const Node& node : watched()) {
        const double residual = residual_after(node, moment_nmm(loads, node));
        if (residual == 0.0) continue;
        sum += node.length_mm * residual * unit_moment_mm(node, at_mm);
    }
    FaceShift of_tapers;
    add_tapers(greatest_with(moments_of(loads)), {}, at_mm, of_tapers, {});
    return sum + of_tapers.at_mm(at_mm);
}

double PlasticSpring::movement_mm(std::span<const Load> loads, double at_mm) const {
    double sum = set_mm(loads, at_mm);
    for (const Load& load : loads) {
        sum += load.force_n * deflection_per_force(flexibility_, at_mm, load.x_mm);
    }
    return sum;
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

}  // namespace backspring
