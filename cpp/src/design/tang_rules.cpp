#include <algorithm>
#include <string>

#include "rules.hpp"

namespace backspring {
namespace {

constexpr RuleText kBetweenPadEdges{"between_pad_edges",
                                    "must lie between the pad's edges at {0} and {1}, got {2}"};
constexpr RuleText kCornerFits{"corner_fits",
                               "must not be larger than the faces it joins ({0}), got {1}"};

void pivot_rules(Requirements& rules, const Tang& tang, const Pad& pad) {
    if (!rules.sound("tang.pivot") || !rules.sound("spring.pad")) {
        return;
    }
    const bool between = pad.start_mm < tang.pivot_mm && tang.pivot_mm < pad.end_mm;
    rules.require(between, "tang.pivot", kBetweenPadEdges, Quantity::length,
                  {pad.start_mm, pad.end_mm}, {tang.pivot_mm});
}

void corner_rules(Requirements& rules, const Tang& tang, double radius, double face) {
    const double room = tang.half_stop_mm ? std::min(face, *tang.half_stop_mm) : face;
    rules.require(radius <= room, "tang.corner_radius", kCornerFits, Quantity::length, {room},
                  {radius});
}

void round_end_rules(Requirements& rules, const Tang& tang) {
    if (!tang.round_end_mm) return;
    constexpr std::string_view key = "tang.round_end";
    rules.require(!tang.half_stop_mm, key,
                  [] { return std::string("must be left out when there is a half_stop"); });
    const double least = std::max(tang.open_mm, tang.closed_mm);
    rules.require(*tang.round_end_mm >= least, key, rule::kAtLeast, Quantity::length, {least},
                  {*tang.round_end_mm});
}

}  // namespace

void detail::tang_rules(Requirements& rules, const Tang& tang, const Pad& pad) {
    pivot_rules(rules, tang, pad);
    if (!rules.sound("tang.open") || !rules.sound("tang.half_stop") ||
        !rules.sound("tang.closed")) {
        return;
    }
    if (rules.sound("tang.corner_radius")) {
        corner_rules(rules, tang, tang.corner_open_mm, tang.open_mm);
        corner_rules(rules, tang, tang.corner_closed_mm, tang.closed_mm);
    }
    if (rules.sound("tang.round_end")) round_end_rules(rules, tang);
}

}  // namespace backspring
