#include "adds_up.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/angle.hpp"

namespace backspring {

bool detail::adds_up(std::span<const Contact* const> contacts,
                     double torque_doubt,
                     double most_nmm,
                     double way_deg) {
    // Where the kick's flank runs into the pad's end torque is beyond all the rest.
    constexpr double of_all = 0.01, rounding = 1e-14;
    // What a short part lacks is little of the whole.
    constexpr double of_way = 0.01;
    const std::size_t places = contacts.size();
    AtPlaces torques;
    double most = of_all * most_nmm;
    for (std::size_t k = 0; k < places; ++k) {
        torques[k] = contacts[k]->torque_nmm;
        most = std::max(most, std::abs(torques[k]));
    }
    const auto angle = [&](std::size_t k) { return contacts[k]->blade_angle_deg; };
    const double length = radians(angle(places - 1) - angle(0));
    const AtPlaces parts = integrals_between({torques.data(), places});
    for (std::size_t i = 0; i + 1 < places; ++i) {
        const double stored = contacts[i]->energy_nmm;
        const double gained = contacts[i + 1]->energy_nmm - stored;
        const double missed = std::abs(gained - length * parts[i]);
        const double way = radians(std::max(angle(i + 1) - angle(i), of_way * way_deg));
        if (missed > torque_doubt * most * way + rounding * stored) return false;
    }
    return true;
}

}  // namespace backspring
