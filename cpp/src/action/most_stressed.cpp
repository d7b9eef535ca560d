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

/// A stress that no contact of a blade alone exceeds. What a unit force does is the greatest of
/// many places' straight lines in where it acts, and so lies below its chord between two places.
class StressBound {
  public:
    StressBound(const Action& action, std::span<const Piece> pieces) {
        constexpr double infinity = std::numeric_limits<double>::infinity();
        if (!action.joint.alone() || action.probe.other_end) return;
        double low = infinity, high = -infinity;
        for (const Piece& piece : pieces) {
            for (const Turn* turn : piece) {
                for (const Touch& touch : turn->contact.all()) {
                    low = std::min(low, touch.x_mm), high = std::max(high, touch.x_mm);
                }
            }
        }
        if (!(low < high)) return;
        const auto per_n = [&](double x_mm) {
            const Load unit{x_mm, 1.0};
            return peak_stress(action.probe, {&unit, 1}).stress_mpa;
        };
        known_ = true, low_mm_ = low, at_low_ = per_n(low);
        slope_ = (per_n(high) - at_low_) / (high - low);
    }

    [[nodiscard]] double of(const Contact& contact) const {
        constexpr double rounding = 1e-12;
        if (!known_) return std::numeric_limits<double>::infinity();
        double sum = 0.0;
        for (const Touch& touch : contact.all()) {
            sum += touch.force_n * (at_low_ + slope_ * (touch.x_mm - low_mm_));
        }
        return sum * (1.0 + rounding);
    }

  private:
    bool known_ = false;
    double low_mm_ = 0.0, at_low_ = 0.0, slope_ = 0.0;
};

/// Worst stresses under the turns of pieces, each worked out when first asked for.
class Peaks {
  public:
    Peaks(const Action& action, std::span<const Piece> pieces) : action_(action) {
        const StressBound bound(action, pieces);
        for (const Piece& piece : pieces) {
            for (const Turn* turn : piece) all_.push_back({turn, bound.of(turn->contact), {}});
        }
    }

    [[nodiscard]] std::size_t count() const { return all_.size(); }

    [[nodiscard]] const PeakStress& at(std::size_t i) {
        auto& [turn, most, peak] = all_[i];
        if (!peak) peak = peak_stress(action_, turn->contact);
        return *peak;
    }

    [[nodiscard]] double most_mpa() {
        const auto highest = std::ranges::max_element(all_, {}, &Peak::most);
        double most = at(static_cast<std::size_t>(highest - all_.begin())).stress_mpa;
        for (std::size_t i = 0; i < count(); ++i) {
            if (all_[i].most > most) most = std::max(most, at(i).stress_mpa);
        }
        return most;
    }

    [[nodiscard]] bool reaches(std::size_t i, double stress_mpa) {
        return all_[i].most >= stress_mpa && at(i).stress_mpa >= stress_mpa;
    }

  private:
    struct Peak {
        const Turn* turn;
        double most;  ///< it is no more than that
        std::optional<PeakStress> peak;
    };

    const Action& action_;
    std::vector<Peak> all_;
};

}  // namespace

Turn most_stressed(const Action& action, std::span<const Piece> pieces) {
    constexpr double nearly = 0.97;
    const auto stress = [&](const Turn& turn) {
        return peak_stress(action, turn.contact).stress_mpa;
    };
    Peaks peaks(action, pieces);
    const double least = nearly * peaks.most_mpa();
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
        for (std::size_t i = 0; i < piece.size(); ++i) {
            if (!peaks.reaches(first + i, least)) continue;
            // Between two turns the worst place is one's or the other's.
            const std::size_t end = std::min(i + 2, piece.size());
            for (std::size_t k = i > 0 ? i - 1 : 0; k < end; ++k) take_in(peaks.at(first + k));
        }
        first += piece.size();
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
