#include <algorithm>
#include <cmath>

#include "backspring/strength/plastic_spring.hpp"
#include "hinge.hpp"

namespace backspring {

PlasticZone PlasticSpring::zone(std::size_t first, std::size_t last) const {
    const auto beyond = [&](std::size_t i) {
        return nodes_[i].borne_nmm / nodes_[i].section.yield_moment_nmm - 1.0;
    };
    // Yielding ends between two nodes, where the moment passes the yield moment.
    const auto edge = [&](std::size_t in, std::size_t out) {
        const double share = beyond(in) / (beyond(in) - beyond(out));
        return std::lerp(nodes_[in].x_mm, nodes_[out].x_mm, share);
    };
    PlasticZone result;
    result.from_mm = first == 0 ? nodes_.front().x_mm : edge(first, first - 1);
    result.to_mm = last + 1 == nodes_.size() ? nodes_.back().x_mm : edge(last, last + 1);
    for (std::size_t i = first; i <= last; ++i) {
        const PlasticSection& section = nodes_[i].section;
        const double moment =
            std::min(nodes_[i].borne_nmm, kHingeShare * section.plastic_moment_nmm);
        const double depth = yielded_depth_mm(section, moment);
        if (depth <= result.depth_mm) continue;
        result.deepest_mm = nodes_[i].x_mm;
        result.depth_mm = depth;
        const SectionBend bent = bend_section(section, moment);
        result.strain.reset();
        if (moment == nodes_[i].borne_nmm) {
            result.strain = bent.curvature_per_mm * (depth + bent.core_mm);
        }
        result.residual_surface_mpa = residual_stress(section, moment).surface_mpa;
    }
    result.turn_rad = turn_rad(result.deepest_mm, first, last);
    return result;
}

double PlasticSpring::turn_rad(double about_mm, std::size_t first, std::size_t last) const {
    double turn = 0.0;
    for (std::size_t i = first; i <= last; ++i) {
        const Node& node = nodes_[i];
        if (std::abs(node.x_mm - about_mm) > 0.5 * node.section.thickness_mm) continue;
        turn += node.length_mm * node.residual_per_mm;
    }
    return turn;
}

std::vector<PlasticZone> PlasticSpring::zones() const {
    const auto yielded = [&](std::size_t i) {
        return i < nodes_.size() && nodes_[i].borne_nmm > nodes_[i].section.yield_moment_nmm;
    };
    std::vector<PlasticZone> result;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
        if (!yielded(i)) continue;
        const std::size_t first = i;
        while (yielded(i + 1)) ++i;
        result.push_back(zone(first, i));
    }
    return result;
}

}  // namespace backspring
