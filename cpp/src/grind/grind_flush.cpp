#include "backspring/grind/grind_flush.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "../design/rules.hpp"
#include "backspring/action/end_stop.hpp"
#include "backspring/check/look.hpp"
#include "grind_removal.hpp"

namespace backspring {
namespace {

constexpr double kFlushMm = 1e-3;
// The bent back is straight to 0.00005 mm between stations as close as this.
constexpr double kSpacingMm = 0.5;
// Heights and bends below this are rounding; stations set by them would fall on one another.
constexpr double kRoundingMm = 1e-9;
constexpr std::size_t kMostPasses = 1000;

void require_line(const std::optional<LinerLine>& liners, double pass_mm) {
    Requirements rules;
    rules.in_range("pass", pass_mm, kFlushMm, kThickestMm, "mm");
    if (liners) {
        bool finite = true;
        for (const double value :
             {liners->rear_mm, liners->rear_height_mm, liners->front_mm, liners->front_height_mm}) {
            finite &= rules.in_range("liners", value, -kLongestMm, kLongestMm, "mm");
        }
        rules.require(!finite || liners->rear_mm < liners->front_mm, "liners", [&] {
            return "the second station must lie ahead of the first, got " +
                   with_unit(liners->rear_mm, "mm") + " and " + with_unit(liners->front_mm, "mm");
        });
    }
    rules.throw_if_any();
}

Design with_all_open(Design design) {
    for (Blade& blade : design.blades) blade.stands = Stand::open;
    return design;
}

/// How far the loaded open back stands above the liners.
class Proud {
  public:
    Proud(const Design& design, const Profile& at_start, const std::optional<LinerLine>& liners)
        : design_(design),
          at_start_(at_start),
          liners_(liners),
          joint_(make_action(with_all_open(design)).joint),
          open_(open_on_stop(joint_)) {}

    /// @param s  a station with the thickness on the side that is meant
    [[nodiscard]] double operator()(const Station& s) const {
        const double x = s.x_mm;
        const double lifted = joint_.face_slope * x + back_mm(joint_, open_, x);
        if (!liners_) {
            // What is removed has no steps here, so either side of a station does.
            return lifted -
                   (thickness_mm(at_start_, x) - thickness_mm(design_.spring.thickness, x));
        }
        const LinerLine& line = *liners_;
        const double share = (x - line.rear_mm) / (line.front_mm - line.rear_mm);
        const double height =
            line.rear_height_mm + share * (line.front_height_mm - line.rear_height_mm);
        const double belly = belly_mm(design_.spring, design_.own().pad, x);
        return joint_.face_mm + lifted + belly + s.thickness_mm - height;
    }

  private:
    const Design& design_;
    const Profile& at_start_;
    const std::optional<LinerLine>& liners_;
    Joint joint_;
    Contact open_;
};

/// Proud height along one straight piece of the thickness, with the places where it begins.
void add_piece(Profile& heights, const Proud& proud, const Station& from, const Station& to) {
    const int parts = static_cast<int>(std::ceil((to.x_mm - from.x_mm) / kSpacingMm));
    for (int i = 0; i <= parts; ++i) {
        const double share = static_cast<double>(i) / parts;
        const Station here = i == parts
                                 ? to
                                 : Station{std::lerp(from.x_mm, to.x_mm, share),
                                           std::lerp(from.thickness_mm, to.thickness_mm, share)};
        const double computed = proud(here);
        const double height = std::abs(computed) < kRoundingMm ? 0.0 : computed;
        if (i > 0) {
            const Station last = heights.back();
            if (last.thickness_mm * height < 0.0) {
                const double along = last.thickness_mm / (last.thickness_mm - height);
                heights.push_back({std::lerp(last.x_mm, here.x_mm, along), 0.0});
            }
        }
        heights.push_back({here.x_mm, height});
    }
}

/// Proud height along the free length; at a step of the thickness both sides.
Profile heights_along(const Design& design,
                      const Profile& at_start,
                      const std::optional<LinerLine>& liners) {
    const Proud proud(design, at_start, liners);
    const double end = whole_spring(design).to_mm;
    // A cut of nothing writes an even thickness out from end to end and adds the middle pin.
    const Profile profile = thinned(design, {{0.0, 0.0}, {end, 0.0}});
    Profile heights;
    for (std::size_t i = 1; i < profile.size(); ++i) {
        const Station &from = profile[i - 1], &to = profile[i];
        if (from.x_mm >= 0.0 && to.x_mm > from.x_mm) add_piece(heights, proud, from, to);
    }
    return heights;
}

double most(const Profile& heights) {
    double highest = heights.front().thickness_mm;
    for (const Station& s : heights) highest = std::max(highest, s.thickness_mm);
    return highest;
}

/// What one pass takes off: what is proud, but no more than it can; without needless stations.
Profile one_pass(const Profile& heights, double pass_mm) {
    const auto depth = [&](std::size_t i) {
        return std::clamp(heights[i].thickness_mm, 0.0, pass_mm);
    };
    Profile removal;
    for (std::size_t i = 0; i < heights.size(); ++i) {
        const bool beside =
            (i > 0 && depth(i - 1) > 0.0) || (i + 1 < heights.size() && depth(i + 1) > 0.0);
        if (depth(i) > 0.0 || beside) removal.push_back({heights[i].x_mm, depth(i)});
    }
    Profile kept;
    for (std::size_t i = 0; i < removal.size(); ++i) {
        if (!kept.empty() && i + 1 < removal.size()) {
            const Station &a = kept.back(), &b = removal[i + 1];
            const double share = (removal[i].x_mm - a.x_mm) / (b.x_mm - a.x_mm);
            const double straight = std::lerp(a.thickness_mm, b.thickness_mm, share);
            if (std::abs(removal[i].thickness_mm - straight) < kRoundingMm) continue;
        }
        kept.push_back(removal[i]);
    }
    return kept;
}

void grind_pass(Design& design, const Profile& removal) {
    take_off(design, removal, 1.0);
    for (const Fault& fault : faults(design)) {
        throw NoConvergence(broken_rule(NoticeCode::flush_breaks_rule, fault));
    }
}

Profile removed_since(const Profile& at_start, const Spring& spring) {
    Profile removed;
    for (const Station& s : spring.thickness) {
        if (s.x_mm < 0.0) continue;
        const Sides before = sides(at_start, s.x_mm), after = sides(spring.thickness, s.x_mm);
        const bool second = !removed.empty() && removed.back().x_mm == s.x_mm;
        removed.push_back(
            {s.x_mm, second ? before.ahead - after.ahead : before.behind - after.behind});
    }
    return removed;
}

}  // namespace

Flush grind_flush(const Design& design, const std::optional<LinerLine>& liners, double pass_mm) {
    require_line(liners, pass_mm);
    Flush flush;
    flush.design = design;
    const Profile& at_start = design.spring.thickness;
    Profile heights = heights_along(design, at_start, liners);
    flush.before = heights;
    flush.at_start = grind_row(design, 0.0);
    flush.left_proud_mm = most(heights);
    while (flush.left_proud_mm > kFlushMm) {
        if (flush.passes.size() == kMostPasses) {
            throw NoConvergence({.code = NoticeCode::flush_passes,
                                 .parameters = {{"passes", kMostPasses, Quantity::count}}});
        }
        grind_pass(flush.design, one_pass(heights, pass_mm));
        flush.removed = removed_since(at_start, flush.design.spring);
        flush.passes.push_back({flush.left_proud_mm, grind_row(flush.design, most(flush.removed))});
        heights = heights_along(flush.design, at_start, liners);
        flush.left_proud_mm = most(heights);
    }
    return flush;
}

}  // namespace backspring
