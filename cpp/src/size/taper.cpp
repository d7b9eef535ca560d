#include "backspring/size/taper.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "backspring/check/look.hpp"
#include "backspring/check/solution.hpp"
#include "backspring/core/require.hpp"
#include "backspring/core/root.hpp"
#include "backspring/design/cases.hpp"
#include "backspring/design/steel_ends.hpp"
#include "size_trial.hpp"

namespace backspring {
namespace {

constexpr int kTaperRounds = 60;
// The shape is found when its stress moves by no more than this share.
constexpr double kSettled = 1e-6;
// Steel left beside a pin hole, in its diameters: common practice, no source.
constexpr double kWebShare = 0.25;

void require(const Design& design, double pull_n, double least_mm, int stations) {
    if (std::vector<Fault> broken = faults(design); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    Requirements rules;
    rules.positive("pull", pull_n, 1e4, "N");
    rules.positive("least_thickness", least_mm, 50.0, "mm");
    rules.in_range("stations", stations, 2.0, 200.0, "");
    rules.require(design.own().blade.nail_nick_mm.has_value(), "blade.nail_nick",
                  [] { return std::string("missing: a pull is felt at the nail nick"); });
    rules.throw_if_any();
}

/// Largest moment that a station sees on the way.
double largest_moment(const Spring& spring, const Turns& travel, double x_mm) {
    const auto moment = [&](const Turn& turn) {
        return bending_moment_nmm(spring, loads(turn.contact), x_mm);
    };
    return std::max(0.0, moment(largest(travel, moment)));
}

double rear_pin_mm(const Spring& spring) {
    return spring.support.kind == SupportKind::two_pins ? -spring.support.rear_pin_mm : 0.0;
}

/// Raises the moments of places to those that a blade makes, the others in any position.
void raise_moments(std::vector<double>& moments,
                   const std::vector<double>& places,
                   const Design& design,
                   std::size_t blade) {
    const bool turned = design.blades[blade].end != design.own().end;
    for (const Design& one : cases(seen_from(design, blade))) {
        Solution solution(one);
        for (std::size_t i = 0; i < places.size(); ++i) {
            const double x = turned ? rear_pin_mm(one.spring) - places[i] : places[i];
            moments[i] = std::max(moments[i], largest_moment(one.spring, solution.travel(), x));
        }
    }
}

class Shaper {
  public:
    Shaper(const Design& design, double least_mm, int stations)
        : design_(design), least_mm_(least_mm) {
        place(stations);
    }

    /// Largest moment of each station of the profile while the blade turns.
    [[nodiscard]] std::vector<double> moments_of(const Design& design) const {
        std::vector<double> moments(places_.size(), 0.0);
        for (std::size_t blade = 0; blade < design.blades.size(); ++blade) {
            raise_moments(moments, places_, design, blade);
        }
        return moments;
    }

    /// The design whose stress is even under these moments.
    [[nodiscard]] Design shaped(const std::vector<double>& moments, double stress_mpa) const {
        Design design = design_;
        Profile& profile = design.spring.thickness;
        profile.clear();
        for (std::size_t i = 0; i < places_.size(); ++i) {
            profile.push_back({places_[i], thick_enough(places_[i], moments[i], stress_mpa)});
        }
        return design;
    }

    /// The level of stress that gives a pull; none when no shape does.
    [[nodiscard]] std::optional<double> level_for(const std::vector<double>& moments,
                                                  double pull_n) const {
        const auto over = [&](double log_stress) {
            const Trial trial = try_design(shaped(moments, std::exp(log_stress)));
            return trial.works() ? *trial.pull_n / pull_n - 1.0 : -1.0;
        };
        constexpr double weakest = 3.0, strongest = 9.5;  // 20 to 13 000 MPa
        constexpr int parts = 40;
        double last = strongest, last_over = over(strongest);
        for (int i = 1; i <= parts; ++i) {
            const double next = strongest + (weakest - strongest) * i / parts;
            const double next_over = over(next);
            if (last_over < 0.0 && next_over >= 0.0) {
                return std::exp(find_root(over, last, next, last_over, next_over));
            }
            last = next;
            last_over = next_over;
        }
        return std::nullopt;
    }

  private:
    void place(int stations) {
        const Spring& spring = design_.spring;
        const auto spread = [&](double from, double to) {
            for (int i = 0; i <= stations; ++i) {
                places_.push_back(from + (to - from) * i / stations);
            }
        };
        const double rear_pin = rear_pin_mm(spring), rear_end = belly_ends(design_).rear_mm;
        const auto at_rear = [&](const Blade& b) { return b.end != design_.own().end; };
        const bool bears_behind = std::ranges::any_of(design_.blades, at_rear);
        if (bears_behind) {
            places_.push_back(steel_ends(design_).rear_mm);
            spread(rear_end, rear_pin);
        }
        if (spring.support.kind == SupportKind::two_pins) {
            // Without a blade there the steel behind the rear pin carries nothing and stays.
            if (spring.thickness.size() > 1) places_.push_back(spring.thickness.front().x_mm);
            spread(rear_pin, 0.0);
        }
        spread(0.0, design_.own().pad.start_mm);
        places_.push_back(design_.own().pad.end_mm);
        places_.push_back(steel_ends(design_).front_mm);
        if (spring.thickness.size() > 1) places_.push_back(spring.thickness.back().x_mm);
        for (const Hole& hole : spring.holes) {
            for (const double share : {-1.0, -0.9, -0.7, -0.4, 0.0, 0.4, 0.7, 0.9, 1.0}) {
                places_.push_back(hole.center_mm + share * 0.5 * hole.diameter_mm);
            }
        }
        std::sort(places_.begin(), places_.end());
        places_.erase(std::unique(places_.begin(), places_.end()), places_.end());
    }

    /// Thickness at which the moment makes the stress, with the steel a hole needs at least.
    [[nodiscard]] double thick_enough(double x, double moment, double stress_mpa) const {
        const double width = width_at_mm(design_.spring, x),
                     cosine = lean_cosine(design_.spring, x);
        double least = least_mm_, chord = 0.0, offset = 0.0;
        for (const Hole& hole : design_.spring.holes) {
            if (std::abs(x - hole.center_mm) > 0.5 * hole.diameter_mm) continue;
            least = std::max(
                least, (1.0 + 2.0 * kWebShare) * hole.diameter_mm + 2.0 * std::abs(hole.offset_mm));
            chord = chord_mm(hole, x);
            offset = hole.offset_mm;
        }
        const auto over = [&](double t) {
            return moment *
                       outer_stress_per_moment(make_section(width, t * cosine, chord, offset)) -
                   stress_mpa;
        };
        const double whole = std::sqrt(6.0 * moment / (width * stress_mpa)) / cosine;
        if (chord == 0.0) return std::max(least, whole);
        const double most = std::max(least, whole) + 2.0 * chord;
        const double at_least = over(least), at_most = over(most);
        if (at_least <= 0.0 || at_most >= 0.0) return at_least <= 0.0 ? least : most;
        return find_root(over, least, most, at_least, at_most);
    }

    const Design& design_;
    double least_mm_;
    std::vector<double> places_;
};

}  // namespace

Taper propose_taper(const Design& design, double pull_n, double least_thickness_mm, int stations) {
    require(design, pull_n, least_thickness_mm, stations);
    const Shaper shaper(design, least_thickness_mm, stations);
    std::vector<double> moments = shaper.moments_of(design);
    double stress = 0.0;
    // Forces hardly depend on the shape once it gives the pull, so few rounds do.
    for (int round = 0; round < kTaperRounds; ++round) {
        const auto next = shaper.level_for(moments, pull_n);
        if (!next) break;
        const double change = std::abs(*next - stress);
        stress = *next;
        const Trial trial = try_design(shaper.shaped(moments, stress));
        if (change < kSettled * stress) {
            const double worst = design.strength.yield_mpa.value / trial.yield_margin;
            return {trial.design, *trial.pull_n, worst, trial.yield_margin, stress};
        }
        moments = shaper.moments_of(trial.design);
    }
    throw NoConvergence({.code = NoticeCode::no_taper,
                         .parameters = {{"least", least_thickness_mm, Quantity::length},
                                        {"pull", pull_n, Quantity::force}}});
}

}  // namespace backspring
