#include "backspring/spring/stretches.hpp"

#include <algorithm>

namespace backspring {
namespace {

std::vector<double> cuts(const Spring& spring, double from_mm, double to_mm) {
    std::vector<double> places{from_mm, to_mm};
    const auto add = [&](double x) {
        if (x > from_mm && x < to_mm) places.push_back(x);
    };
    for (const Station& station : spring.thickness) add(station.x_mm);
    for (const Hole& hole : spring.holes) {
        if (hole.diameter_mm <= 0.0) continue;
        add(hole.center_mm - 0.5 * hole.diameter_mm);
        add(hole.center_mm);
        add(hole.center_mm + 0.5 * hole.diameter_mm);
    }
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places;
}

Hole hole_through(const Spring& spring, double x_mm) {
    for (const Hole& hole : spring.holes) {
        if (chord_mm(hole, x_mm) > 0.0) return hole;
    }
    return {};
}

}  // namespace

std::vector<Stretch> cut_into_stretches(const Spring& spring, double from_mm, double to_mm) {
    const std::vector<double> places = cuts(spring, from_mm, to_mm);
    std::vector<Stretch> stretches;
    stretches.reserve(places.size());
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        const double start = places[i], end = places[i + 1], middle = 0.5 * (start + end);
        // Stations next to each other to the last bit are a step: no number lies between.
        if (!(start < middle && middle < end)) continue;
        // Two points inside give the straight line, whatever steps lie at its ends.
        const double t_start = thickness_mm(spring.thickness, start);
        const double t_middle = thickness_mm(spring.thickness, middle);
        stretches.push_back({.start_mm = start,
                             .end_mm = end,
                             .thickness_mm = t_start,
                             .taper = (t_middle - t_start) / (middle - start),
                             .hole = hole_through(spring, middle),
                             .upto = {}});
    }
    return stretches;
}

}  // namespace backspring
