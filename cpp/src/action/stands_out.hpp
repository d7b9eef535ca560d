#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <span>

#include "held.hpp"
#include "places.hpp"

namespace backspring::detail {

/// Whether a touch is one of a flat of another blade.
[[nodiscard]] inline bool on_another_flat(const Indenter& indenter, const Borne& other) {
    return other.touch.part.flat && other.indenter->part.blade != indenter.part.blade;
}

/// Whether a kick or an arc bears between two stations: it holds the face there, dip or none.
[[nodiscard]] inline bool held_between(std::span<const Borne> borne, double a_mm, double b_mm) {
    return std::ranges::any_of(borne, [&](const Borne& b) {
        return !b.touch.part.flat && (b.touch.x_mm - a_mm) * (b_mm - b.touch.x_mm) > 0.0;
    });
}

/// How far the face seems to dip under a flat beside those of other blades, which fill it.
///
/// @param borne  what bears already, with the forces of held
[[nodiscard]] inline double dip_mm(const Flexibility& flexibility,
                                   const Indenter& indenter,
                                   const Held& held,
                                   std::span<const Borne> borne,
                                   const Touch& touch) {
    double dip = 0.0;
    if (!touch.part.flat) return dip;
    for (std::size_t i = 0; i < borne.size(); ++i) {
        const double at_mm = borne[i].touch.x_mm;
        if (!on_another_flat(indenter, borne[i]) || held_between(borne, at_mm, touch.x_mm))
            continue;
        dip += shear_dip_mm(flexibility, touch.x_mm, held.forces_n()[static_cast<Eigen::Index>(i)],
                            at_mm);
    }
    return dip;
}

/// Whether a flat reaches deeper than another blade's right where that bears: no dip hides it.
[[nodiscard]] inline bool reaches_deeper(const Indenter& indenter, std::span<const Borne> borne) {
    return std::ranges::any_of(borne, [&](const Borne& b) {
        const double x = b.touch.x_mm;
        if (!on_another_flat(indenter, b)) return false;
        if (x < indenter.pad.start_mm || x > indenter.pad.end_mm) return false;
        const auto top = indenter.outline.top_at(x - indenter.pivot_mm);
        return top && stands_in(indenter, top->y_mm - b.touch.height_mm);
    });
}

/// Whether a touch stands out of the bent face no more than it dips there.
///
/// @param overlap_mm  by how much it stands out
[[nodiscard]] inline bool is_in_dip(const Flexibility& flexibility,
                                    const Indenter& indenter,
                                    const Held& held,
                                    std::span<const Borne> borne,
                                    const Touch& touch,
                                    double overlap_mm) {
    const double dip = dip_mm(flexibility, indenter, held, borne, touch);
    return !stands_in(indenter, overlap_mm - dip) && !reaches_deeper(indenter, borne);
}

/// Whether an indenter stands out of the face bent by other blades, by more than its dip.
///
/// @param borne  what bears already, with the forces of held
[[nodiscard]] inline bool stands_out(const Flexibility& flexibility,
                                     const Indenter& indenter,
                                     const Held& held,
                                     std::span<const Borne> borne) {
    const auto spring = [&](double x) {
        Answer answer = held.answer(indenter, x);
        answer.mm_per_n = 0.0;  // no force of its own yet
        return answer;
    };
    const Range all{0.5 * indenter.pad.start_mm, std::numeric_limits<double>::infinity()};
    const std::optional<Touch> deepest =
        BearingSearch(indenter.outline, indenter.pivot_mm, all, spring).on(indenter.pad);
    if (!deepest) return false;
    const double overlap = deepest->height_mm - spring(deepest->x_mm).face_mm;
    return !is_in_dip(flexibility, indenter, held, borne, *deepest, overlap);
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
