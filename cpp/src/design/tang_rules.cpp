#include <algorithm>
#include <string>

#include "backspring/tang/drawn_outline.hpp"
#include "rules.hpp"

namespace backspring {
namespace {

constexpr RuleText kBetweenPadEdges{"between_pad_edges",
                                    "must lie between the pad's edges at {0} and {1}, got {2}"};
constexpr RuleText kCornerFits{"corner_fits",
                               "must not be larger than the faces it joins ({0}), got {1}"};
constexpr RuleText kWithinDrawn{"within_drawn",
                                "must stand at most 3 mm out of the drawn outline, which reaches "
                                "{0} there, got {1}"};
constexpr double kMostStockMm = 3.0;

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

const char* text_of(OutlineFlaw flaw) {
    switch (flaw) {
        case OutlineFlaw::too_few:
            return "must have at least three corners";
        case OutlineFlaw::not_convex:
            return "must be convex and go round once, counterclockwise";
        case OutlineFlaw::pivot_outside:
            return "must go round the pivot at [0, 0]";
        case OutlineFlaw::none:
            break;
    }
    return nullptr;
}

/// A grinder takes off; little more than what is drawn can have been left on.
void outline_rules(Requirements& rules, const Tang& tang) {
    constexpr std::string_view key = "tang.outline";
    if (!rules.sound(key)) return;
    if (const char* text = text_of(flaw_of(tang.outline))) return rules.fail(key, text);
    const std::vector<Arc> arcs = arcs_of(tang.outline);
    const DrawnFaces drawn = faces_of(arcs);
    const auto within = [&](std::string_view face, double given, double drawn_mm) {
        rules.require(given <= drawn_mm + kMostStockMm, face, kWithinDrawn, Quantity::length,
                      {drawn_mm}, {given});
    };
    within("tang.open", tang.open_mm, drawn.open_mm);
    within("tang.closed", tang.closed_mm, drawn.closed_mm);
    if (tang.half_stop_mm)
        within("tang.half_stop", *tang.half_stop_mm, reach_mm(arcs, drawn.end_rad));
}

}  // namespace

void detail::tang_rules(Requirements& rules, const Tang& tang, const Pad& pad) {
    pivot_rules(rules, tang, pad);
    if (!tang.outline.empty()) outline_rules(rules, tang);
    if (!rules.sound("tang.open") || !rules.sound("tang.half_stop") ||
        !rules.sound("tang.closed")) {
        return;
    }
    if (tang.outline.empty() && rules.sound("tang.corner_radius")) {
        corner_rules(rules, tang, tang.corner_open_mm, tang.open_mm);
        corner_rules(rules, tang, tang.corner_closed_mm, tang.closed_mm);
    }
    if (rules.sound("tang.round_end")) round_end_rules(rules, tang);
}

}  // namespace backspring
