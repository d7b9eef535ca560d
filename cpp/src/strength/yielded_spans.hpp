#pragma once

#include <algorithm>
#include <span>

#include "backspring/strength/plastic_taper.hpp"
#include "hinge.hpp"

namespace backspring::detail {

[[nodiscard]] inline Span common(const Span& a, const Span& b) {
    return {std::max(a.from_mm, b.from_mm), std::min(a.to_mm, b.to_mm)};
}

/// Calls back with every span of a taper that the greatest moments make yield, and its moment.
template <class Add>
void each_yielded(std::span<const MomentPart> most,
                  const PlasticTaper& taper,
                  const Span& within,
                  Add add) {
    const double from_nmm = taper.yield_moment_nmm(taper.from_mm);
    const double least_nmm = std::min(from_nmm, taper.yield_moment_nmm(taper.to_mm));
    for (std::size_t i = 0; i < most.size(); ++i) {
        const StraightMoment& moment = most[i].moment;
        if (std::max(moment.at_nmm(within.from_mm), moment.at_nmm(within.to_mm)) <= least_nmm) {
            continue;
        }
        const Span greatest{i > 0 ? most[i].from_mm : within.from_mm,
                            i + 1 < most.size() ? most[i + 1].from_mm : within.to_mm};
        const Span part = common(greatest, within);
        if (!(part.from_mm < part.to_mm)) continue;
        const Span yields = common(taper.beyond(most[i].moment, 1.0), part);
        if (yields.from_mm < yields.to_mm) add(most[i], yields);
    }
}

/// Calls back with the lasting turns of a span that yields, hinges by themselves.
template <class Add>
void each_turn(const MomentPart& part, const PlasticTaper& taper, const Span& yields, Add add) {
    constexpr double plastic = 1.5;
    const StraightMoment& moment = part.moment;
    const double least =
        std::min(taper.yield_moment_nmm(yields.from_mm), taper.yield_moment_nmm(yields.to_mm));
    const double most = std::max(moment.at_nmm(yields.from_mm), moment.at_nmm(yields.to_mm));
    if (most < plastic * kTaperHingeShare * least)
        return add(part, yielded_turn(taper, moment, yields));
    const Span hinge = common(taper.beyond(moment, plastic * kTaperHingeShare), yields);
    if (!(hinge.from_mm < hinge.to_mm)) return add(part, yielded_turn(taper, moment, yields));
    const auto beside = [&](const Span& span) {
        if (span.from_mm < span.to_mm) add(part, yielded_turn(taper, moment, span));
    };
    beside({yields.from_mm, hinge.from_mm});
    add(part, hinged_turn(taper, moment, hinge));
    beside({hinge.to_mm, yields.to_mm});
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
