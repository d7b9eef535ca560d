#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

#include "backspring/action/turns.hpp"

namespace backspring {
namespace {

// Beyond any spring: the worst place wherever it is.
constexpr double kAnyStation = std::numeric_limits<double>::infinity();

/// Stress at a place of this end of the spring, per moment there; nothing where that is none.
std::optional<double> stress_per_moment(const StressProbe& probe, double station_mm) {
    const auto there = [&](const auto& place) { return place.x_mm == station_mm; };
    const auto ahead = std::ranges::find_if(probe.ahead, there);
    if (ahead != probe.ahead.end()) return ahead->stress_per_moment;
    if (there(probe.behind) && !probe.other_end) return probe.behind.stress_per_moment;
    return std::nullopt;
}

}  // namespace

Turn most_stressed(const Action& action, std::span<const Piece> pieces) {
    constexpr double nearly = 0.97;
    const auto stress = [&](const Turn& turn) {
        return peak_stress(action, turn.contact).stress_mpa;
    };
    std::vector<PeakStress> peaks;
    for (const Piece& piece : pieces) {
        for (const Turn* turn : piece) peaks.push_back(peak_stress(action, turn->contact));
    }
    const double most = std::ranges::max_element(peaks, {}, &PeakStress::stress_mpa)->stress_mpa;
    std::vector<double> stations;
    if (action.probe.other_end) stations.push_back(kAnyStation);
    const auto take_in = [&](const PeakStress& peak) {
        // A place that moves with the turn is told by the worst of all.
        const bool fixed = stress_per_moment(action.probe, peak.station_mm).has_value();
        const double station = fixed ? peak.station_mm : kAnyStation;
        if (std::ranges::count(stations, station) == 0) stations.push_back(station);
    };
    std::size_t first = 0;
    for (const Piece& piece : pieces) {
        const auto own = std::span(peaks).subspan(first, piece.size());
        first += piece.size();
        for (std::size_t i = 0; i < own.size(); ++i) {
            if (own[i].stress_mpa < nearly * most) continue;
            // Between two turns the worst place is one's or the other's.
            const std::size_t end = std::min(i + 2, own.size());
            for (std::size_t k = i > 0 ? i - 1 : 0; k < end; ++k) take_in(own[k]);
        }
    }
    std::optional<Turn> worst;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const double station = std::max(stations[i], 0.0);
        const auto per_moment = stress_per_moment(action.probe, stations[i]);
        Turn top = largest(action, pieces, [&](const Turn& turn) {
            return per_moment ? *per_moment * moment_ahead_nmm(turn.contact, station)
                              : stress(turn);
        });
        if (!worst || stress(top) > stress(*worst)) worst = std::move(top);
        take_in(peak_stress(action, worst->contact));
    }
    return *worst;
}

}  // namespace backspring
