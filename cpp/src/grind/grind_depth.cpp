#include "backspring/grind/grind_depth.hpp"

#include <algorithm>
#include <cmath>

#include "../core/root.hpp"
#include "backspring/core/require.hpp"
#include "backspring/grind/grind_table.hpp"

namespace backspring {
namespace {

// Looked for up to this share of a depth that itself cannot be cut.
constexpr double kNearLimit = 0.999;
// A root that leaves more than this share of the pull is a jump: the blade lets go there.
constexpr double kMet = 1e-6;

std::string fine_mm(double value) { return with_unit(std::round(value * 1e4) / 1e4, "mm"); }

std::string newtons(double value) { return with_unit(std::round(value * 100.0) / 100.0, "N"); }

/// Peak pull; a blade that does not snap pulls nothing.
double pull_of(const Design& design) { return grind_row(design, 0.0).peak_pull_n.value_or(0.0); }

bool met(double pull_n, double wanted_n) { return std::abs(pull_n - wanted_n) <= kMet * wanted_n; }

void require_pull(const Design& design, double pull_n) {
    Requirements rules;
    for (const Fault& fault : faults(design)) rules.fail(fault);
    rules.positive("pull", pull_n, 1e4, "N");
    rules.require(design.blade.nail_nick_mm.has_value(), "blade.nail_nick", [] {
        return std::string("missing: a pull needs the distance pivot to nail nick");
    });
    rules.throw_if_any();
}

/// What preload would do instead, as the second half of a refusal.
std::string preload_instead(const Design& design, double pull_n) {
    const auto way = preload_for_pull(design, pull_n);
    if (!way) return "; no preload gives it either";
    std::string text = "; a preload of " + fine_mm(way->preload_mm) + " instead of " +
                       fine_mm(design.fit.preload_mm) + " gives it";
    if (way->rear_pin_offset_mm) {
        const double now =
            design.fit.preload_mm * design.spring.support.rear_pin_mm / design.tang.pivot_mm;
        text += ": rear-pin offset " + fine_mm(*way->rear_pin_offset_mm) + ", rear hole moved by " +
                fine_mm(std::abs(*way->rear_pin_offset_mm - now));
    }
    if (way->yield_margin && *way->yield_margin < 1.0) text += ", but then the spring yields";
    return text;
}

NoConvergence refusal(const Design& design, double pull_n, const std::string& why) {
    return NoConvergence("grinding cannot give a pull of " + newtons(pull_n) + ": " + why +
                         preload_instead(design, pull_n));
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
                      "the spring pulls " + newtons(as_it_is) + " and every pass lowers that");
    }
    const auto excess = [&](double depth) {
        return pull_of(grind(design, {face, depth, region})) - pull_n;
    };
    const double deepest = limit.allowed ? limit.depth_mm : kNearLimit * limit.depth_mm;
    const double least = excess(deepest);
    if (least > 0.0) {
        throw refusal(design, pull_n,
                      "at " + fine_mm(limit.depth_mm) + " " + limit.reason +
                          ", and just before the "
                          "spring still pulls " +
                          newtons(least + pull_n));
    }
    const double depth = find_root(excess, 0.0, deepest, as_it_is - pull_n, least);
    const double pull = excess(depth) + pull_n;
    if (!met(pull, pull_n)) {
        throw refusal(design, pull_n, "from " + fine_mm(depth) + " on the blade no longer snaps");
    }
    return depth;
}

std::optional<PreloadForPull> preload_for_pull(const Design& design, double pull_n) {
    require_pull(design, pull_n);
    Design changed = design;
    const auto excess = [&](double preload) {
        changed.fit.preload_mm = preload;
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
            way.preload_mm * design.spring.support.rear_pin_mm / design.tang.pivot_mm;
    }
    return way;
}

}  // namespace backspring
