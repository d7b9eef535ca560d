#include <algorithm>
#include <cmath>

#include "backspring/strength/plastic_spring.hpp"
#include "hinge.hpp"
#include "yielded_spans.hpp"

namespace backspring {
PlasticSpring::Node PlasticSpring::node_at(const PlasticTaper& taper, double x_mm) const {
    Node node{.x_mm = x_mm,
              .length_mm = 0.0,
              .section = make_plastic_section(taper.width_mm, taper.thickness_at_mm(x_mm),
                                              taper.youngs_modulus_mpa, taper.yield_mpa),
              .share_behind = share_behind(x_mm),
              .elastic_nmm = 0.0,
              .borne_nmm = borne_nmm(x_mm)};
    // Where yielding ends the moment is the yield moment but for rounding.
    constexpr double same = 1.0 + 1e-12;
    const double yield = node.section.yield_moment_nmm;
    if (node.borne_nmm <= same * yield) node.borne_nmm = std::min(node.borne_nmm, yield);
    return node;
}

/// The nodes, and of the tapers their ends, where yielding ends and where it may be deepest.
std::vector<PlasticSpring::Node> PlasticSpring::sampled() const {
    std::vector<Node> all;
    all.reserve(nodes_.size() + 6 * tapers_.size());
    std::size_t next = 0;
    for (const PlasticTaper& taper : tapers_) {
        for (; next < nodes_.size() && nodes_[next].x_mm <= taper.from_mm; ++next) {
            all.push_back(nodes_[next]);
        }
        const auto add = [&](double x) { all.push_back(node_at(taper, x)); };
        add(taper.from_mm);
        each_yielded(borne_.along(taper), taper, {taper.from_mm, taper.to_mm},
                     [&](const MomentPart& part, const Span& yields) {
                         add(yields.from_mm);
                         const double worst = taper.worst_mm(part.moment);
                         if (worst > yields.from_mm && worst < yields.to_mm) add(worst);
                         add(yields.to_mm);
                     });
        add(taper.to_mm);
    }
    all.insert(all.end(), nodes_.begin() + static_cast<std::ptrdiff_t>(next), nodes_.end());
    return all;
}

PlasticZone PlasticSpring::zone(std::span<const Node> all,
                                std::size_t first,
                                std::size_t last) const {
    const auto beyond = [&](std::size_t i) {
        return all[i].borne_nmm / all[i].section.yield_moment_nmm - 1.0;
    };
    // Yielding ends between two nodes, where the moment passes the yield moment.
    const auto edge = [&](std::size_t in, std::size_t out) {
        const double share = beyond(in) / (beyond(in) - beyond(out));
        return std::lerp(all[in].x_mm, all[out].x_mm, share);
    };
    PlasticZone result;
    result.from_mm = first == 0 ? all.front().x_mm : edge(first, first - 1);
    result.to_mm = last + 1 == all.size() ? all.back().x_mm : edge(last, last + 1);
    std::size_t deepest = first;
    for (std::size_t i = first; i <= last; ++i) {
        const PlasticSection& section = all[i].section;
        const double moment = std::min(all[i].borne_nmm, kHingeShare * section.plastic_moment_nmm);
        const double depth = yielded_depth_mm(section, moment);
        if (depth <= result.depth_mm) continue;
        deepest = i;
        result.deepest_mm = all[i].x_mm;
        result.depth_mm = depth;
    }
    const PlasticSection& section = all[deepest].section;
    const double moment =
        std::min(all[deepest].borne_nmm, kHingeShare * section.plastic_moment_nmm);
    if (moment == all[deepest].borne_nmm) {
        const SectionBend bent = bend_section(section, moment);
        result.strain = bent.curvature_per_mm * (result.depth_mm + bent.core_mm);
    }
    result.residual_surface_mpa = residual_stress(section, moment).surface_mpa;
    result.turn_rad = turn_rad(all[deepest], {result.from_mm, result.to_mm});
    return result;
}

/// Within half a thickness of a section, as far as a zone goes.
double PlasticSpring::turn_rad(const Node& about, const Span& zone) const {
    const double half = 0.5 * about.section.thickness_mm;
    const Span near = common({about.x_mm - half, about.x_mm + half}, zone);
    double sum = 0.0;
    for (const Node& node : nodes_) {
        const bool inside = node.x_mm >= near.from_mm && node.x_mm <= near.to_mm;
        if (inside) sum += node.length_mm * node.residual_per_mm;
    }
    for (const PlasticTaper& taper : tapers_) {
        each_yielded(borne_.along(taper), taper, common({taper.from_mm, taper.to_mm}, near),
                     [&](const MomentPart& part, const Span& yields) {
                         each_turn(part, taper, yields, [&](const MomentPart&, const SpanTurn& t) {
                             sum += t.turn_rad;
                         });
                     });
    }
    return sum;
}

std::vector<PlasticZone> PlasticSpring::zones() const {
    const std::vector<Node> all = sampled();
    const auto yielded = [&](std::size_t i) {
        return i < all.size() && all[i].borne_nmm > all[i].section.yield_moment_nmm;
    };
    std::vector<PlasticZone> result;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!yielded(i)) continue;
        const std::size_t first = i;
        while (yielded(i + 1)) ++i;
        result.push_back(zone(all, first, i));
    }
    return result;
}

}  // namespace backspring
