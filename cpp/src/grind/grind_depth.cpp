#include "backspring/grind/grind_depth.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/check/case_solutions.hpp"
#include "backspring/core/require.hpp"
#include "backspring/core/root.hpp"
#include "backspring/grind/grind_table.hpp"

namespace backspring {
namespace {

// Looked for up to this share of a depth that itself cannot be cut.
constexpr double kNearLimit = 0.999;
// A root that leaves more than this share of the pull is a jump: the blade lets go there.
constexpr double kMet = 1e-6;

/// Peak pull; a blade that does not snap pulls nothing.
double pull_of(const Design& design) {
    CaseSolutions solved(design);
    return peak_pull_n(solved).value_or(0.0);
}

bool met(double pull_n, double wanted_n) { return std::abs(pull_n - wanted_n) <= kMet * wanted_n; }

void require_pull(const Design& design, double pull_n) {
    Requirements rules;
    for (const Fault& fault : faults(design)) rules.fail(fault);
    rules.positive("pull", pull_n, 1e4, "N");
    rules.require(design.own().blade.nail_nick_mm.has_value(), "blade.nail_nick", [] {
        return std::string("missing: a pull needs the distance pivot to nail nick");
    });
    rules.throw_if_any();
}

/// What preload would do instead, as part of a refusal.
void add_preload(Notice& notice, const Design& design, double pull_n) {
    const auto way = preload_for_pull(design, pull_n);
    if (!way) return;
    const auto add = [&](const char* name, double mm) {
        notice.parameters.push_back({name, mm, Quantity::length});
    };
    add("preload", way->preload_mm);
    add("preload_now", design.own().fit.preload_mm);
    if (way->rear_pin_offset_mm) {
        const double now = design.own().fit.preload_mm * design.spring.support.rear_pin_mm /
                           design.own().tang.pivot_mm;
        add("rear_pin_offset", *way->rear_pin_offset_mm);
        add("hole_moved", std::abs(*way->rear_pin_offset_mm - now));
    }
    if (way->yield_margin) {
        notice.parameters.push_back({"yield_margin", *way->yield_margin, Quantity::ratio});
    }
}

NoConvergence refusal(const Design& design, double pull_n, Notice why) {
    why.parameters.push_back({"pull", pull_n, Quantity::force});
    add_preload(why, design, pull_n);
    return NoConvergence(std::move(why));
}

const char* name_of(GrindEnd end) {
    switch (end) {
        case GrindEnd::no_steel:
            return "no-steel";
        case GrindEnd::hole_opens:
            return "hole-opens";
        case GrindEnd::preload_used:
            return "preload-used";
    }
    return "";
}

}  // namespace

double depth_for_pull(const Design& design,
                      GrindFace face,
                      const std::optional<GrindRegion>& region,
                      double pull_n) {
    require_pull(design, pull_n);
    const GrindLimit limit = grind_limits(design, face, region).front();
    const double as_it_is = pull_of(design);
    if (met(as_it_is, pull_n)) return 0.0;
    if (as_it_is < pull_n) {
        throw refusal(design, pull_n,
                      {.code = NoticeCode::grind_too_weak,
                       .parameters = {{"pull_now", as_it_is, Quantity::force}}});
    }
    const auto excess = [&](double depth) {
        return pull_of(grind(design, {face, depth, region})) - pull_n;
    };
    const double deepest = limit.allowed ? limit.depth_mm : kNearLimit * limit.depth_mm;
    const double least = excess(deepest);
    if (least > 0.0) {
        throw refusal(design, pull_n,
                      {.code = NoticeCode::grind_limit,
                       .parameters = {{"depth", limit.depth_mm, Quantity::length},
                                      {"hole", limit.hole_mm, Quantity::length},
                                      {"pull_left", least + pull_n, Quantity::force}},
                       .names = {{"end", name_of(limit.end)}}});
    }
    const double depth = find_root(excess, 0.0, deepest, as_it_is - pull_n, least);
    const double pull = excess(depth) + pull_n;
    if (!met(pull, pull_n)) {
        throw refusal(design, pull_n,
                      {.code = NoticeCode::grind_lets_go,
                       .parameters = {{"depth", depth, Quantity::length}}});
    }
    return depth;
}

std::optional<PreloadForPull> preload_for_pull(const Design& design, double pull_n) {
    require_pull(design, pull_n);
    Design changed = design;
    const auto excess = [&](double preload) {
        changed.own().fit.preload_mm = preload;
        return pull_of(changed) - pull_n;
    };
    double most = 0.0;
    for (const Station& s : design.spring.thickness) most = std::max(most, s.thickness_mm);
    const double low = excess(0.0), high = excess(most);
    if (low > 0.0 || high < 0.0) return std::nullopt;
    PreloadForPull way;
    way.preload_mm = find_root(excess, 0.0, most, low, high);
    if (!met(excess(way.preload_mm) + pull_n, pull_n)) return std::nullopt;
    way.yield_margin = grind_row(changed, 0.0).yield_margin;
    if (design.spring.support.kind == SupportKind::two_pins) {
        way.rear_pin_offset_mm =
            way.preload_mm * design.spring.support.rear_pin_mm / design.own().tang.pivot_mm;
    }
    return way;
}

}  // namespace backspring
