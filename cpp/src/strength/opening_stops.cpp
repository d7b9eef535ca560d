#include <algorithm>
#include <array>
#include <cmath>

#include "opening.hpp"

namespace backspring {
namespace {

// A moment so near what it bears may be more between the turns.
constexpr double kMayYield = 0.995;
// The set about the worst angle is asked to so much, to tell where to stop.
constexpr double kRoughShare = 1e-2, kRoughMm = 1e-9;
constexpr std::size_t kStops = 3, kBetween = 3;
// Closer together all stops are one.
constexpr double kOneStopDeg = 0.02;

double moment_nmm(const Loads& loads, double x_mm) {
    double sum = 0.0;
    for (const Load& load : loads) sum += load.force_n * std::max(load.x_mm - x_mm, 0.0);
    return sum;
}

}  // namespace

/// The angles between which the greatest moments arise: from where it is bent most as far ahead as
/// it yields to where it is bent most at its root, both as it will be set.
std::vector<Opening::Stop> Opening::stops_of(const Way& way, const Setting& most) const {
    StressedPiece after = way.forces;
    for (SeenForces& each : after.seen()) {
        if (each.angle_deg < way.from_deg || each.angle_deg > way.to_deg) continue;
        lessen(fitted_.joint.flexibility, each.loads, moved(most.set, -1.0, each.set));
    }
    const auto top_at = [&](double x_mm) {
        return after.top_deg(way.from_deg, way.to_deg,
                             [&](const Loads& loads) { return moment_nmm(loads, x_mm); });
    };
    double from = top_at(plastic_.yields_upto_mm(most.loads)), to = top_at(0.0);
    if (from > to) std::swap(from, to);
    const auto stop_at = [&](double angle) {
        constexpr std::size_t all_near = 4;
        const Loads loads = way.as_fitted->at(angle, all_near);
        Stop stop{angle};
        if (loads.size() == 1 && fitted_.joint.alone()) stop.as_fitted = *loads.data();
        return stop;
    };
    if (to - from < kOneStopDeg) return {stop_at(to)};
    std::vector<Stop> stops;
    for (std::size_t i = 0; i < kStops; ++i) {
        stops.push_back(stop_at(std::lerp(from, to, static_cast<double>(i) / (kStops - 1))));
    }
    return stops;
}

/// Bends it as between stops: root moment and force go from stop to stop along a parabola.
bool Opening::bend_between(std::span<const SeenForces> stopped) {
    if (stopped.size() != kStops) return false;
    struct Line {
        double root_nmm = 0.0, force_n = 0.0;
    };
    std::array<Line, kStops> lines;
    for (std::size_t i = 0; i < kStops; ++i) {
        if (stopped[i].loads.size() != 1) return false;
        const auto& [x, force] = *stopped[i].loads.data();
        lines[i] = {x * force, force};
    }
    std::vector<Load> between;
    for (std::size_t i = 0; i + 1 < kStops; ++i) {
        for (std::size_t k = 1; k <= kBetween; ++k) {
            const double at = static_cast<double>(i) + static_cast<double>(k) / (kBetween + 1.0);
            const std::array shares{0.5 * (at - 1.0) * (at - 2.0), at * (2.0 - at),
                                    0.5 * at * (at - 1.0)};
            Line line;
            for (std::size_t j = 0; j < kStops; ++j) {
                line.root_nmm += shares[j] * lines[j].root_nmm;
                line.force_n += shares[j] * lines[j].force_n;
            }
            Load load{line.root_nmm / line.force_n, line.force_n};
            // A hinge turns at the stops alone: a trace of moment more would turn it far.
            load.force_n *= std::min(plastic_.share_to_hinge({&load, 1}), 1.0);
            between.push_back(load);
        }
    }
    plastic_.bend_by_each(between);
    shift_ = plastic_.shift();
    return true;
}

/// Stops as the blade passes; whether the spring is set further.
bool Opening::stop_in_turn(Way& way) {
    refresh_about(way);
    const Loads worst = way.forces.at(way.worst_deg);
    if (plastic_.beyond_elastic(worst) < kMayYield) return false;
    const Setting most = setting_forces(plastic_, fitted_.joint.flexibility, worst, shift_, {},
                                        {kRoughMm, kRoughShare});
    const std::vector<Stop> stops = stops_of(way, most);
    std::vector<SeenForces> stopped;
    Setting guess = most;
    bool further = false;
    for (std::size_t i = 0; i < stops.size(); ++i) {
        Held held = held_at(stops[i], guess.set, guess.loads);
        stopped.push_back({stops[i].angle_deg, held.setting.loads, held.setting.set});
        if (i > 0 && i + 1 == stops.size() && bend_between(stopped)) {
            held = held_again(held, stops[i]);
            stopped.back() = {stops[i].angle_deg, held.setting.loads, held.setting.set};
        }
        further = bend(held.setting) || further;
        guess = held.setting;
    }
    for (const SeenForces& each : stopped) way.forces.take_in(each);
    return further;
}

}  // namespace backspring
