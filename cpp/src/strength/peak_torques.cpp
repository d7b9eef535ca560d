#include <algorithm>
#include <limits>
#include <vector>

#include "backspring/strength/plastic_set.hpp"

namespace backspring {
namespace {

constexpr auto opening_nmm = [](const Turn& turn) { return turn.opening_nmm(); };

/// A turn that its neighbours do not pass.
struct Crest {
    std::size_t place;  ///< of all turns
    double value;       ///< there
};

/// The highest first.
std::vector<Crest> crests_of(std::span<const Turn* const> turns) {
    std::vector<double> values;
    values.reserve(turns.size());
    for (const Turn* turn : turns) values.push_back(opening_nmm(*turn));
    std::vector<Crest> crests;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const bool rises = i == 0 || values[i] >= values[i - 1];
        const bool falls = i + 1 == values.size() || values[i] >= values[i + 1];
        if (rises && falls) crests.push_back({i, values[i]});
    }
    std::ranges::sort(crests, [](const Crest& a, const Crest& b) { return a.value > b.value; });
    return crests;
}

/// The greatest about a turn of the travel as fitted, for a joint whose face has moved.
double greatest_about(std::span<const Turn* const> turns, std::size_t place, const Action& moved) {
    constexpr double little_deg = 1e-3;
    const auto angle = [&](std::size_t i) { return angle_of(turns[i]); };
    const std::size_t last = turns.size() - 1;
    std::size_t from = place, to = place;
    for (std::size_t wide = 1;; wide *= 2) {
        // Both sides of a cut lie in one place.
        while (from > 0 && angle(place) - angle(from) < little_deg) --from;
        while (to < last && angle(to) - angle(place) < little_deg) ++to;
        const Turns about(moved, {angle(from), angle(to)});
        const Turn top = largest(about, opening_nmm);
        // It lies beyond one end as long as it is found there.
        const bool behind = angle_of(&top) <= angle(from) && from > 0;
        const bool ahead = angle_of(&top) >= angle(to) && to < last;
        if (!behind && !ahead) return opening_nmm(top);
        if (behind) from -= std::min(from, wide);
        if (ahead) to += std::min(last - to, wide);
    }
}

}  // namespace

PeakTorques peak_torques(const Turns& travel, const PlasticSet& set) {
    const double before = opening_nmm(largest(travel, opening_nmm));
    if (!set.yielded) return {before, before};
    Action moved = travel.action();
    moved.joint = with_shift(moved.joint, set.shift);
    // A set takes from the torque everywhere: what was less than is left elsewhere need not be
    // seen.
    double after = -std::numeric_limits<double>::infinity();
    for (const Crest& crest : crests_of(travel.all())) {
        if (crest.value <= after) break;
        after = std::max(after, greatest_about(travel.all(), crest.place, moved));
    }
    return {before, after};
}

}  // namespace backspring
