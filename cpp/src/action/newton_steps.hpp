#pragma once

#include <cmath>

namespace backspring::detail {

/// The force that presses the face up to a place of the outline, and how the loaded face lies to
/// it.
struct Pressed {
    double force_n;
    double miss;        ///< by how much the loaded face is steeper than the outline
    double slope_rate;  ///< how fast that face grows steeper with the station
};

/// @param overlap_mm   of outline and free face
/// @param above_face   by how much the outline is steeper than the free face
/// @param mm_per_n, rad_per_n, rad_per_nmm  see OwnCompliance
[[nodiscard]] inline Pressed press(
    double overlap_mm, double above_face, double mm_per_n, double rad_per_n, double rad_per_nmm) {
    const double per_way = 1.0 / mm_per_n, force = overlap_mm * per_way;
    const double turned = force * rad_per_n;
    // The outline rises by its slope, the free face by its own.
    return {force, turned - above_face,
            (above_face - 2.0 * turned) * per_way * rad_per_n + force * rad_per_nmm};
}

/// A coordinate along a part of the outline, slope or station, and the miss there with its rate.
struct MissAt {
    double place = 0.0, miss = 0.0, place_per_miss = 0.0;
    double stretch_mm = -1.0;  ///< where the smooth stretch begins that it lies on

    [[nodiscard]] double newton_step() const { return -miss * place_per_miss; }
};

/// The last two places of a search along a part: a cubic in the miss has both, with both rates.
struct LastTwo {
    double of_two;    ///< product of the last two ways that is small enough
    double one_look;  ///< a way over which the spring goes on as its last answer tells
    MissAt before{}, last{};

    void add(const MissAt& next) {
        before = last;
        last = next;
    }

    [[nodiscard]] bool smooth() const {
        return before.stretch_mm == last.stretch_mm && before.miss != last.miss;
    }

    /// Whether what the next step leaves is rounding: the square of the last one's way by Newton's
    /// method, of the product of the last two by the cubic, both times far less than one.
    [[nodiscard]] bool one_step_left() const {
        constexpr double alone = 5e-7, short_way = 1e-4;
        const double left = std::abs(last.newton_step());
        if (left <= alone) return true;
        return smooth() && left <= short_way &&
               left * std::abs(last.place - before.place) <= of_two;
    }

    /// Whether no more looks at the spring are needed.
    [[nodiscard]] bool looked_enough() const {
        return one_step_left() || std::abs(last.newton_step()) <= one_look;
    }

    [[nodiscard]] double next_place() const {
        const double newton = last.place + last.newton_step();
        if (!smooth()) return newton;
        const double apart = before.miss - last.miss;
        const double chord = (before.place - last.place) / apart;
        const double square = (chord - last.place_per_miss) / apart;
        const double cube =
            (before.place_per_miss - 2.0 * chord + last.place_per_miss) / (apart * apart);
        return newton + last.miss * last.miss * (square - cube * before.miss);
    }
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
