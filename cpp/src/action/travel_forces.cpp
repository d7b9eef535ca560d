#include "backspring/action/travel_forces.hpp"

#include <algorithm>

#include "hills.hpp"

namespace backspring {

double ForceShares::of(const Contact& contact) const {
    double moment = 0.0;
    for (const Touch& touch : contact.all()) moment += touch.force_n * touch.x_mm;
    return of(contact.force_n, moment);
}

TravelForces::TravelForces(const Turns& travel) : travel_(&travel) {
    if (!tells()) return;
    forces_n_.reserve(travel.all().size());
    moments_nmm_.reserve(travel.all().size());
    for (const Turn* turn : travel.all()) {
        double moment = 0.0;
        for (const Touch& touch : turn->contact.all()) {
            moment += touch.force_n * touch.x_mm;
            least_mm_ = std::min(least_mm_, touch.x_mm);
        }
        forces_n_.push_back(turn->contact.force_n);
        moments_nmm_.push_back(moment);
    }
}

Peak TravelForces::largest(const ForceShares& shares) const {
    std::vector<double> values(forces_n_.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = shares.of(forces_n_[i], moments_nmm_[i]);
    }
    const auto value = [&](const Turn& turn) { return shares.of(turn.contact); };
    return peak_of(travel_->action(), travel_->pieces(), values, value);
}

}  // namespace backspring
