#include "backspring/check/verdict.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "verdict_parts.hpp"

namespace backspring {

// In the order of the kinds, which is checked below.
constexpr std::array<MarginName, 18> kMarginNames{{
    {MarginKind::yield, "yield", MarginGroup::holds},
    {MarginKind::set, "set", MarginGroup::holds},
    {MarginKind::strain, "strain", MarginGroup::holds},
    {MarginKind::hole_edge, "hole-edge", MarginGroup::holds},
    {MarginKind::kink, "kink", MarginGroup::holds},
    {MarginKind::shoulder, "shoulder", MarginGroup::holds},
    {MarginKind::curve, "curve", MarginGroup::holds},
    {MarginKind::fatigue, "fatigue", MarginGroup::lasts},
    {MarginKind::spring_trade, "spring-trade", MarginGroup::lasts, false},
    {MarginKind::contact_pressure, "contact-pressure", MarginGroup::wears},
    {MarginKind::galling, "galling", MarginGroup::wears, false},
    {MarginKind::middle_pin_shear, "middle-pin-shear", MarginGroup::holds},
    {MarginKind::middle_pin_bearing, "middle-pin-bearing", MarginGroup::holds},
    {MarginKind::middle_pin_liner, "middle-pin-liner", MarginGroup::holds},
    {MarginKind::rear_pin_shear, "rear-pin-shear", MarginGroup::holds},
    {MarginKind::rear_pin_bearing, "rear-pin-bearing", MarginGroup::holds},
    {MarginKind::rear_pin_liner, "rear-pin-liner", MarginGroup::holds},
    {MarginKind::rap, "rap", MarginGroup::feels, false},
}};

namespace {

constexpr bool kinds_in_order() {
    for (std::size_t i = 0; i < kMarginNames.size(); ++i) {
        if (static_cast<std::size_t>(kMarginNames[i].kind) != i) return false;
    }
    return static_cast<std::size_t>(MarginKind::rap) + 1 == kMarginNames.size();
}
static_assert(kinds_in_order());

const MarginName& entry(MarginKind kind) { return kMarginNames.at(static_cast<std::size_t>(kind)); }

std::pair<MarginWord, double> rank(const Margin& margin) {
    return {margin.word, margin.margin.value_or(std::numeric_limits<double>::infinity())};
}

}  // namespace

std::string_view name_of(MarginKind kind) { return entry(kind).name; }

Margin detail::make_margin(MarginKind kind, double value, double limit, Quantity quantity) {
    Margin margin;
    margin.kind = kind;
    margin.group = entry(kind).group;
    margin.value = value;
    margin.limit = limit;
    margin.quantity = quantity;
    if (value > 0.0) margin.margin = limit / value;
    return margin;
}

namespace {

/// Of so little that limit over value is no number any more, nothing is asked.
void drop_endless(Margin& margin) {
    for (std::optional<double>* each : {&margin.margin, &margin.margin_low}) {
        if (*each && !std::isfinite(**each)) each->reset();
    }
}

}  // namespace

MarginWord word_of(std::optional<double> margin, std::optional<double> margin_low) {
    if (!margin) return MarginWord::holds;
    if (*margin < 1.0) return MarginWord::fails;
    const bool close = *margin < kCloseMargin || margin_low.value_or(*margin) < 1.0;
    return close ? MarginWord::close : MarginWord::holds;
}

void detail::sort_margins(std::vector<Margin>& margins) {
    std::ranges::stable_sort(margins, {}, rank);
}

std::vector<Margin> verdict(const Design& design, const Worked& worked) {
    std::vector<Margin> margins;
    margins.reserve(kMarginNames.size());
    const std::optional<PlasticSet> set = judge_bending(margins, design, worked);
    const std::vector<Notch> notches = find_notches(design, worked);
    judge_strain(margins, design, worked, notches, set);
    judge_local(margins, design, worked, notches);
    judge_life(margins, design, worked, notches);
    judge_wear(margins, design, worked);
    judge_rap(margins, design, worked);
    for (Margin& each : margins) {
        drop_endless(each);
        const bool asked = each.kind == MarginKind::rap && design.targets.edge_gap_mm;
        if (asked || entry(each.kind).can_fail) each.word = word_of(each.margin, each.margin_low);
    }
    sort_margins(margins);
    return margins;
}

}  // namespace backspring
