#include "hills.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace backspring {
namespace {

/// A parabola through a turn and its neighbours, or the two next to an end: how it goes there.
struct Parabola {
    double slope, curvature;
};

Parabola parabola_at(const Piece& piece, std::size_t i, const Values& values) {
    const std::size_t j = std::clamp<std::size_t>(i, 1, piece.size() - 2);
    const double behind = angle_of(piece[j]) - angle_of(piece[j - 1]);
    const double ahead = angle_of(piece[j + 1]) - angle_of(piece[j]);
    const double left = (values[j] - values[j - 1]) / behind;
    const double right = (values[j + 1] - values[j]) / ahead;
    const double curvature = 2.0 * (right - left) / (behind + ahead);
    const double slope = (left * ahead + right * behind) / (behind + ahead);
    return {slope + curvature * (angle_of(piece[i]) - angle_of(piece[j])), curvature};
}

Hill make_hill(const Piece& piece, std::size_t i, const Values& values) {
    constexpr double much = 1e-3;
    Hill hill{.piece = &piece, .values = values, .place = i};
    if (piece.size() < 3) return hill;
    const auto [slope, curvature] = parabola_at(piece, i, values);
    const double inwards = hill.at_first() ? slope : hill.at_last() ? -slope : 0.0;
    if (inwards < 0.0) {
        const double fall = values[i] - values[hill.at_first() ? 1 : i - 1];
        hill.falls = fall > much * std::abs(values[i]) &&
                     -inwards * (hill.high_deg() - hill.low_deg()) > 0.5 * fall;
    } else if (curvature < 0.0) {
        hill.ahead = -slope / curvature;
        hill.rise = 0.5 * slope * hill.ahead;
    }
    return hill;
}

/// Whether a hill cannot come up to a value: a parabola through three turns whose highest is the
/// first or the middle one rises by less than that is above the others.
bool stays_below(const Piece& piece, std::size_t i, const Values& values, double least_rise) {
    if (piece.size() < 3) return least_rise > 0.0;
    const std::size_t j = std::clamp<std::size_t>(i, 1, piece.size() - 2);
    return values[i] - std::min({values[j - 1], values[j], values[j + 1]}) < least_rise;
}

/// Among the few others, after those that are no lower.
void put_in(std::vector<Hill>& hills, const Hill& hill) {
    auto place = hills.end();
    while (place != hills.begin() && (place - 1)->guess() < hill.guess()) --place;
    hills.insert(place, hill);
}

}  // namespace

std::vector<Hill> detail::hills_of(std::span<const Piece> pieces, const Values& values) {
    const double highest = *std::ranges::max_element(values);
    const double most_rise = 10.0, least = highest - 2.0 * kWorthALook * std::abs(highest);
    std::vector<Hill> hills;
    hills.reserve(pieces.size() + 2);
    std::size_t first = 0;
    for (const Piece& piece : pieces) {
        const Values own = values.subspan(first, piece.size());
        first += piece.size();
        double before = own[0];
        for (std::size_t i = 0; i < piece.size(); ++i) {
            const double here = own[i], after = i + 1 < piece.size() ? own[i + 1] : here;
            const bool passed = std::exchange(before, here) > here || after > here;
            if (passed) continue;
            if (stays_below(piece, i, own, (least - own[i]) / most_rise)) continue;
            const Hill hill = make_hill(piece, i, own);
            if (hill.value() + most_rise * hill.rise >= least) put_in(hills, hill);
        }
    }
    return hills;
}

}  // namespace backspring
