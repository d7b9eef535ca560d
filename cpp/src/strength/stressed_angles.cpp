#include "stressed_angles.hpp"

#include <algorithm>
#include <cmath>

namespace backspring {
namespace {

// Gaps that begin or end below so much of a stress do not reach it on the way.
constexpr double kNear = 0.9;

/// At most a degree, and less where little of a piece is stressed beyond a stress: what lies beside
/// a slight peak adds to its set.
double spacing_deg(const Piece& piece, const TurnValue& stress, double stress_mpa) {
    constexpr double most_deg = 1.0, slight_deg = 45.0, most_looks = 240.0;
    double from = angle_of(piece.back()), to = angle_of(piece.front());
    for (std::size_t i = 0; i < piece.size(); ++i) {
        if (stress(*piece[i]) <= stress_mpa) continue;
        from = std::min(from, angle_of(piece[i > 0 ? i - 1 : 0]));
        to = std::max(to, angle_of(piece[std::min(i + 1, piece.size() - 1)]));
    }
    const double stressed = std::max(to - from, 0.0), share = stressed / slight_deg;
    if (share == 0.0) return most_deg;
    return most_deg * std::min(1.0, std::max(share * share, stressed / most_looks));
}

}  // namespace

std::vector<StressedAngle> detail::stressed_angles(const Turns& travel, double stress_mpa) {
    const auto stress = [&](const Turn& turn) {
        return peak_stress(travel.action(), turn.contact).stress_mpa;
    };
    std::vector<StressedAngle> angles, others;
    for (const Piece& piece : travel.pieces()) {
        const Turn top = largest(travel.action(), {&piece, 1}, stress);
        if (stress(top) <= stress_mpa) continue;
        angles.push_back({stress(top), angle_of(&top), std::nullopt});
        const auto look = [&](const Turn& turn) {
            const double here = stress(turn);
            if (here > stress_mpa) others.push_back({here, angle_of(&turn), turn.contact});
        };
        const double spacing = spacing_deg(piece, stress, stress_mpa);
        look(*piece[0]);
        for (std::size_t i = 1; i < piece.size(); ++i) {
            const double from = angle_of(piece[i - 1]), to = angle_of(piece[i]);
            const int parts = static_cast<int>(std::ceil((to - from) / spacing));
            const bool worth =
                std::max(stress(*piece[i - 1]), stress(*piece[i])) > kNear * stress_mpa;
            for (int k = 1; k < parts && worth; ++k) {
                look(turn_at(travel.action(), std::lerp(from, to, static_cast<double>(k) / parts)));
            }
            look(*piece[i]);
        }
    }
    angles.insert(angles.end(), others.begin(), others.end());
    return angles;
}

}  // namespace backspring
