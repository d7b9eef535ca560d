#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/strength/plastic_spring.hpp"
#include "hinge.hpp"
#include "yielded_spans.hpp"

namespace backspring {

double PlasticSpring::borne_nmm(double x_mm) const {
    if (x_mm < 0.0) return borne_.behind.moment.at_nmm(x_mm);
    double most = 0.0;
    for (const MomentPart& part : borne_.ahead) most = std::max(most, part.moment.at_nmm(x_mm));
    return most;
}

/// The sections of a taper of which one is bent farthest from what it has borne: between them what
/// it bears elastically is a straight line, or as bent so far.
void PlasticSpring::add_shares(const PlasticTaper& taper, std::vector<Share>& shares) const {
    const auto add = [&](double x) {
        const double most = std::max(taper.yield_moment_nmm(x), borne_nmm(x));
        shares.push_back({std::max(x, 0.0) / most, share_behind(x) / most});
    };
    add(taper.from_mm);
    add(taper.to_mm);
    if (taper.from_mm < 0.0) return add(taper.worst_mm({1.0, -1.0 / rear_pin_mm_}));
    each_yielded(borne_.ahead, taper, {taper.from_mm, taper.to_mm},
                 [&](const MomentPart&, const Span& yields) {
                     add(yields.from_mm);
                     add(yields.to_mm);
                 });
}

/// The sections of which one is bent farthest, whatever straight line the moments follow: with
/// moments a - b x, a section's share of what it bears is a/m - b x/m, and the upper hull of all
/// (x/m, 1/m) has the largest.
///
/// @source A. M. Andrew, Information Processing Letters 9 (1979), monotone chain
void PlasticSpring::find_foremost() {
    std::vector<Share> all;
    all.reserve(count_ + 8 * watched_.size() + 1);
    // Behind the pin the root's moment alone tells.
    all.push_back({0.0, 0.0});
    for (const Node& node : watched()) {
        const double per_elastic = 1.0 / node.elastic_nmm;
        all.push_back({std::max(node.x_mm, 0.0) * per_elastic, node.share_behind * per_elastic});
    }
    for (const PlasticTaper& taper : watched_) add_shares(taper, all);
    std::ranges::sort(all, {}, &Share::of_force_mm);
    foremost_.clear();
    for (const Share& share : all) {
        if (!foremost_.empty() && share.of_root <= foremost_.back().of_root) continue;
        while (!foremost_.empty() && share.of_force_mm <= foremost_.back().of_force_mm) {
            foremost_.pop_back();
        }
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

double PlasticSpring::beyond_elastic(const StraightMoment& moment) const {
    double most = 0.0;
    for (const Share& share : foremost_) {
        most = std::max(most, moment.root_nmm * share.of_root - moment.fall_n * share.of_force_mm);
    }
    for (const PlasticTaper& taper : watched_) {
        const double x = taper.from_mm < 0.0 ? taper.from_mm : taper.worst_mm(moment);
        if (x == taper.from_mm) continue;
        most = std::max(most, moment.at_nmm(x) / std::max(taper.yield_moment_nmm(x), borne_nmm(x)));
    }
    return most;
}

double PlasticSpring::beyond_elastic(std::span<const Load> loads) const {
    if (loads.size() == 1) {
        const Load& only = loads.front();
        return beyond_elastic({only.force_n * only.x_mm, only.force_n});
    }
    double most = 0.0;
    for (const MomentPart& part : moments_of(loads))
        most = std::max(most, beyond_elastic(part.moment));
    return most;
}

double PlasticSpring::yields_upto_mm(std::span<const Load> loads) const {
    double upto = 0.0;
    for (const Node& node : watched()) {
        if (moment_nmm(loads, node) > node.elastic_nmm) upto = std::max(upto, node.x_mm);
    }
    std::vector<MomentPart> parts = moments_of(loads);
    keep_greatest(parts);
    for (const PlasticTaper& taper : watched_) {
        if (taper.from_mm < 0.0) continue;
        each_yielded(
            parts, taper, {taper.from_mm, taper.to_mm},
            [&](const MomentPart&, const Span& yields) { upto = std::max(upto, yields.to_mm); });
    }
    return upto;
}

double PlasticSpring::share_to_hinge(std::span<const Load> loads) const {
    double least = std::numeric_limits<double>::infinity();
    const auto consider = [&](double moment, double hinge) {
        if (moment > 0.0) least = std::min(least, hinge / moment);
    };
    for (const Node& node : watched()) {
        const double hinge = kHingeShare * node.section.plastic_moment_nmm;
        consider(moment_nmm(loads, node), std::max(hinge, node.borne_nmm));
    }
    constexpr double plastic = 1.5 * kTaperHingeShare;
    const std::vector<MomentPart> parts = moments_of(loads);
    for (const PlasticTaper& taper : watched_) {
        const auto consider_at = [&](const StraightMoment& moment, double x) {
            const double hinge = plastic * taper.yield_moment_nmm(x);
            consider(moment.at_nmm(x), std::max(hinge, borne_nmm(x)));
        };
        for (const MomentPart& part : parts) {
            StraightMoment moment = part.moment;
            if (taper.from_mm < 0.0) moment.fall_n = -moment.root_nmm / rear_pin_mm_;
            consider_at(moment, taper.from_mm);
            consider_at(moment, taper.to_mm);
            if (taper.taper != 0.0) consider_at(moment, taper.worst_mm(moment));
        }
    }
    return least;
}

bool PlasticSpring::bears(std::span<const Load> loads) const {
    constexpr double plastic = 1.5;
    const std::vector<MomentPart> parts = moments_of(loads);
    const StraightMoment root = parts.empty() ? StraightMoment{} : parts.back().moment;
    const auto holds = [&](const PlasticTaper& taper, StraightMoment moment) {
        if (taper.from_mm < 0.0) moment = {root.root_nmm, -root.root_nmm / rear_pin_mm_};
        const double stations[] = {taper.from_mm, taper.to_mm, taper.worst_mm(moment)};
        return std::ranges::all_of(stations, [&](double x) {
            return moment.at_nmm(x) < plastic * taper.yield_moment_nmm(x);
        });
    };
    return std::ranges::all_of(nodes_,
                               [&](const Node& node) {
                                   return moment_nmm(loads, node) <
                                          kHingeShare * node.section.plastic_moment_nmm;
                               }) &&
           std::ranges::all_of(tapers_, [&](const PlasticTaper& taper) {
               return std::ranges::all_of(
                   parts, [&](const MomentPart& part) { return holds(taper, part.moment); });
           });
}

}  // namespace backspring
