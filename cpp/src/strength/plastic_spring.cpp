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
    other.shift_ = {};
    for (Node& node : other.nodes_) {
        const double share = yield_mpa / node.section.yield_mpa;
        node.borne_nmm = node.residual_per_mm = 0.0;
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
    find_foremost();
}

/// The sections of which one is bent farthest, whatever straight line the moments follow: with
/// moments a - b x, a section's share of what it bears is a/m - b x/m, and the upper hull of all
/// (x/m, 1/m) has the largest.
///
/// @source A. M. Andrew, Information Processing Letters 9 (1979), monotone chain
void PlasticSpring::find_foremost() {
    std::vector<Share> all;
    all.reserve(count_ + 1);
    // Behind the pin the root's moment alone tells.
    all.push_back({0.0, 0.0});
    for (const Node& node : watched()) {
        const double per_elastic = 1.0 / node.elastic_nmm,
                     of_root = node.share_behind * per_elastic;
        if (node.x_mm > 0.0) {
            all.push_back({node.x_mm * per_elastic, of_root});
        } else {
            all.front().of_root = std::max(all.front().of_root, of_root);
        }
    }
    std::ranges::sort(all, {}, &Share::of_force_mm);
    foremost_.clear();
    for (const Share& share : all) {
        if (!foremost_.empty() && share.of_root <= foremost_.back().of_root) continue;
        while (foremost_.size() > 1) {
            const Share &before = foremost_[foremost_.size() - 2], &last = foremost_.back();
            if ((last.of_root - before.of_root) * (share.of_force_mm - last.of_force_mm) >
                (share.of_root - last.of_root) * (last.of_force_mm - before.of_force_mm)) {
                break;
            }
            foremost_.pop_back();
        }
        foremost_.push_back(share);
    }
}

std::span<const PlasticSpring::Node> PlasticSpring::watched() const {
    return std::span(nodes_).subspan(first_, count_);
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
    double most = 0.0;
    if (count_ > 0 && watched().back().x_mm <= moments.nearest_mm && !foremost_.empty()) {
        for (const Share& share : foremost_) {
            most = std::max(most,
                            moments.root_nmm * share.of_root - moments.force_n * share.of_force_mm);
        }
        return most;
    }
    for (const Node& node : watched()) most = std::max(most, moments.at(node) / node.elastic_nmm);
    return most;
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
    FaceShift shift = shift_;
    if (loads.empty()) return shift;
    std::ranges::fill(per_n, FaceShift{});
    for (const Node& node : watched()) {
        const double moment = moments.at(node);
        if (moment <= node.elastic_nmm) continue;
        const Residual residual = residual_of(node.section, moment);
        add_turn(shift, node, node.length_mm * (residual.per_mm - node.residual_per_mm));
        for (std::size_t i = 0; i < per_n.size(); ++i) {
            const double turn = node.length_mm * residual.per_nmm2;
            add_turn(per_n[i], node, turn * unit_moment_mm(node, loads[i].x_mm));
        }
    }
    return shift;
}

void PlasticSpring::bend(std::span<const Load> loads) {
    const Moments moments(loads);
    shift_ = {};
    for (Node& node : nodes_) {
        const double moment = moments.at(node);
        if (moment > node.borne_nmm) {
            node.residual_per_mm = residual_after(node, moment);
            node.borne_nmm = moment;
            node.elastic_nmm = std::max(node.elastic_nmm, moment);
        }
        add_turn(shift_, node, node.length_mm * node.residual_per_mm);
    }
    find_foremost();
}

}  // namespace backspring
