#include "backspring/strength/yielding.hpp"
#include "check_parts.hpp"

namespace backspring {

Travel detail::make_travel(const Design& design,
                           const Peak& force,
                           const Contact& stress,
                           const PeakStress& peak) {
    Travel travel;
    travel.peak_force_n = force.value;
    travel.peak_force_angle_deg = force.blade_angle_deg;
    travel.peak_stress_mpa = peak.stress_mpa;
    travel.peak_stress_angle_deg = stress.blade_angle_deg;
    travel.peak_stress_station_mm = peak.station_mm;
    if (const auto margin = yield_margin(design.strength.yield_mpa, travel.peak_stress_mpa)) {
        travel.yield_margin = margin->value;
        travel.yield_margin_low = margin->low;
        travel.yield_margin_high = margin->high;
    }
    return travel;
}

Worked detail::worked_out(Solution& solution) {
    return {.action = solution.action(),
            .travel = solution.travel(),
            .ways = solution.ways(),
            .rests = solution.rests(),
            .strokes = solution.strokes(),
            .worst = solution.most_stressed().contact,
            .ranges = solution.ranges()};
}

}  // namespace backspring
