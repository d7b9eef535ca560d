#include "backspring/action/rap.hpp"

#include <algorithm>

#include "backspring/core/angle.hpp"
#include "backspring/core/require.hpp"
#include "past_rest.hpp"

namespace backspring {
std::vector<std::optional<Overtravel>> overtravels(const Action& action,
                                                   const Contact& closed,
                                                   std::span<const double> energies_mj) {
    Requirements rules;
    double most = 0.0;
    for (const double energy : energies_mj) {
        rules.in_range("energy_mj", energy, 0.0, 1e9, "mJ");
        most = std::max(most, energy);
    }
    rules.throw_if_any();
    std::optional<PastRest> past;
    if (most > 0.0) past.emplace(action, closed, most);
    std::vector<std::optional<Overtravel>> found;
    for (const double energy : energies_mj) {
        found.push_back(energy == 0.0 ? Overtravel{} : past->taking_up(energy));
    }
    return found;
}

std::optional<Overtravel> overtravel(const Action& action,
                                     const Contact& closed,
                                     double energy_mj) {
    return overtravels(action, closed, {&energy_mj, 1}).front();
}

Rap rap(const Action& action,
        const Contact& closed,
        double energy_mj,
        double edge_radius_mm,
        std::optional<double> edge_clearance_mm) {
    Requirements rules;
    rules.in_range("energy_mj", energy_mj, 0.0, 1e9, "mJ");
    rules.positive("edge_radius_mm", edge_radius_mm, 1e4, "mm");
    if (edge_clearance_mm) {
        rules.in_range("edge_clearance_mm", *edge_clearance_mm, 0.0, 1e4, "mm");
    }
    rules.throw_if_any();
    Rap found;
    found.energy_mj = energy_mj;
    found.past = overtravel(action, closed, energy_mj);
    if (!found.past) return found;
    const double dip = radians(found.past->angle_deg) * edge_radius_mm;
    found.edge_dip_mm = dip;
    if (edge_clearance_mm) found.clearance_left_mm = *edge_clearance_mm - dip;
    return found;
}

}  // namespace backspring
