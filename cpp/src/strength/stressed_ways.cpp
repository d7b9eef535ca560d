#include <algorithm>

#include "opening.hpp"

namespace backspring {
namespace {

// A piece whose turns all bend it by less of that stays elastic between them, too.
constexpr double kHardly = 0.9;

}  // namespace

MomentLine detail::line_of(std::span<const Load> loads, double ahead_mm) {
    MomentLine line{.ahead_mm = ahead_mm};
    for (const Load& load : loads) {
        line.root_nmm += load.force_n * load.x_mm;
        line.ahead_nmm += load.force_n * std::max(load.x_mm - ahead_mm, 0.0);
    }
    return line;
}

std::vector<StressedWay> detail::stressed_ways(const Turns& travel, const PlasticSpring& plastic) {
    const auto beyond = [&](const Turn& turn) {
        return plastic.beyond_elastic(loads_ahead(turn.contact));
    };
    std::vector<StressedWay> ways;
    for (const Piece& piece : travel.pieces()) {
        std::vector<double> all;
        all.reserve(piece.size());
        for (const Turn* turn : piece) all.push_back(beyond(*turn));
        if (*std::ranges::max_element(all) <= kHardly) continue;
        std::vector<SeenForces> seen;
        seen.reserve(piece.size());
        for (const Turn* turn : piece) {
            seen.push_back({angle_of(turn), loads_ahead(turn->contact)});
        }
        const Turn worst = largest(travel.action(), {&piece, 1}, beyond);
        ways.push_back(
            {StressedPiece(std::move(seen)), std::move(all), angle_of(&worst), beyond(worst)});
    }
    return ways;
}

}  // namespace backspring
