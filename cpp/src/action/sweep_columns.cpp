#include "backspring/action/sweep_columns.hpp"

namespace backspring {

Sweep columns(const std::vector<Step>& steps) {
    const auto column = [&](auto value) {
        Eigen::ArrayXd values(static_cast<Eigen::Index>(steps.size()));
        for (std::size_t i = 0; i < steps.size(); ++i) {
            values[static_cast<Eigen::Index>(i)] = value(steps[i]);
        }
        return values;
    };
    return {.blade_angle_deg = column([](const Step& s) { return s.turn.contact.blade_angle_deg; }),
            .force_n = column([](const Step& s) { return s.turn.contact.force_n; }),
            .opening_torque_nmm = column([](const Step& s) { return s.turn.opening_nmm(); }),
            .closing_torque_nmm = column([](const Step& s) { return s.turn.closing_nmm(); }),
            .energy_mj = column([](const Step& s) { return s.turn.contact.energy_nmm; }),
            .peak_stress_mpa = column([](const Step& s) { return s.peak.stress_mpa; }),
            .peak_stress_station_mm = column([](const Step& s) { return s.peak.station_mm; })};
}

}  // namespace backspring
