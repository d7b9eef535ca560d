#include "backspring/fit/blades_plan.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan_notices.hpp"
#include "plan_parts.hpp"

namespace backspring {
namespace {

constexpr std::array<TangFace, 4> kOrder{TangFace::open, TangFace::half_stop, TangFace::closed,
                                         TangFace::kick};
constexpr double kUnmovedMm = 1e-8;
constexpr double kHairShare = 0.25;
constexpr int kMostPasses = 60;
constexpr int kMostTurns = 40;

/// One blade while its part of the plan is made.
struct Bench {
    FittedBlade fitted;
    TipRemoval whole;  ///< what comes off in all
    FaceDepths left;   ///< of it
    FitPlan plan;
    double start_tip_mm = 0.0;

    /// What will be off in the end.
    [[nodiscard]] FaceDepths ends_with() const {
        FaceDepths depths = whole.depths;
        for (const TangFace face : kOrder) depths.of(face) -= plan.left_standing.of(face);
        return depths;
    }
};

class Planning {
  public:
    Planning(const Design& now, FitState state, const PlanRules& rules)
        : now_(now), state_(state), rules_(rules) {}

    BladesPlan plan(const std::vector<FittedBlade>& blades) {
        for (const FittedBlade& each : blades) start(each);
        solve();
        split();
        return finished();
    }

  private:
    /// The knife as one blade sees it, the others with what is off them.
    [[nodiscard]] Design seen(const Bench& bench, bool whole, bool own = false) const {
        Design design = now_;
        for (const Bench& each : benches_) {
            if (&each == &bench && !own) continue;
            Blade& blade = design.blades[each.fitted.blade];
            blade = take_off(std::move(blade), whole ? each.ends_with() : each.plan.removed);
        }
        return seen_from(design, bench.fitted.blade);
    }

    [[nodiscard]] PlanSubject subject(const Design& design, const Bench& bench) const {
        return subject_of(design, state_, rules_, bench.fitted.unknowns);
    }

    void start(const FittedBlade& fitted) {
        Bench bench{.fitted = fitted, .whole = {}, .left = {}, .plan = {}};
        const Design design = seen_from(now_, fitted.blade);
        const Pair shown = lowest_of(design, {}, fitted.unknowns);
        bench.plan.aim_mm = subject(design, bench).aim_mm;
        bench.plan.half_stop_loaded_mm = shown.half_stop_mm;
        bench.plan.closed_loaded_mm = *shown.closed_mm;
        const double angle = fit_readings(design, fitted.unknowns).closed_angle_deg.value();
        if (const auto tip = tip_height_mm(design, angle)) {
            bench.start_tip_mm = *tip;
            bench.plan.tip_mm = 0.0;
        }
        bench.plan.now = design;
        benches_.push_back(std::move(bench));
    }

    void solve() {
        double moved = 1.0;
        for (int turn = 0; moved > kUnmovedMm && turn < kMostTurns; ++turn) {
            moved = 0.0;
            for (Bench& bench : benches_) {
                const Design design = seen(bench, true);
                const FaceDepths before = bench.whole.depths;
                bench.whole = wanted_removal(subject(design, bench));
                for (const TangFace face : kOrder) {
                    const double change = bench.whole.depths.of(face) - before.of(face);
                    moved = std::max(moved, std::abs(change));
                }
            }
            if (benches_.size() == 1) break;
        }
        for (Bench& bench : benches_) bench.left = bench.whole.depths;
    }

    /// What one pass takes of what is left to come off a face.
    [[nodiscard]] double share_mm(double left_mm, bool may_end) const {
        const bool last =
            may_end && left_mm <= kThouMm && 10.0 * rules_.repeatability_mm <= kThouMm;
        return last ? left_mm : (1.0 - rules_.reserve) * left_mm;
    }

    /// How far a blade's lowest readings would move if all that is left came off the others.
    [[nodiscard]] double waits_for_mm(const Bench& bench) const {
        if (benches_.size() == 1) return 0.0;
        const Design here = seen(bench, false, true), there = [&] {
            Design design = now_;
            for (const Bench& each : benches_) {
                Blade& blade = design.blades[each.fitted.blade];
                blade = take_off(std::move(blade),
                                 &each == &bench ? each.plan.removed : each.ends_with());
            }
            return seen_from(design, bench.fitted.blade);
        }();
        const Pair a = lowest_of(here, {}, bench.fitted.unknowns);
        const Pair b = lowest_of(there, {}, bench.fitted.unknowns);
        const double half = a.half_stop_mm ? std::abs(*a.half_stop_mm - *b.half_stop_mm) : 0.0;
        return std::max(half, std::abs(*a.closed_mm - *b.closed_mm));
    }

    /// Splits the whole removal into passes; a face's part below what counts is left out.
    void split() {
        const double nothing_mm = subject(now_, benches_.front()).near_mm;
        for (Bench& bench : benches_) {
            for (const TangFace face : kOrder) {
                if (bench.left.of(face) < nothing_mm) bench.left.of(face) = 0.0;
            }
        }
        // Readings tell the first pass; what would follow it must be worth another reading.
        double enough_mm = 0.0;
        bool shared = true;
        for (int turn = 0; shared && turn < kMostPasses; ++turn) {
            std::vector<bool> may_end;
            for (const Bench& bench : benches_) {
                may_end.push_back(waits_for_mm(bench) <= kHairShare * kHairMm);
            }
            shared = false;
            const int pass = passes_ + 1;
            for (std::size_t i = 0; i < benches_.size(); ++i) {
                shared |= take_share(benches_[i], pass, may_end[i], enough_mm);
            }
            enough_mm = std::max(nothing_mm, rules_.repeatability_mm);
        }
    }

    /// Takes a pass's share off a blade's faces; says whether there was any.
    bool take_share(Bench& bench, int pass, bool may_end, double enough_mm) {
        // The closed blade leans on the corner that the half-stop face shares, so its last pass
        // waits until that face is done.
        const bool closed_may_end = may_end && bench.left.half_stop_mm == 0.0;
        const Design design = seen(bench, false);
        bool shared = false;
        for (const TangFace face : kOrder) {
            double& rest = bench.left.of(face);
            double& waiting = bench.plan.left_standing.of(face);
            const bool side = face == TangFace::closed || face == TangFace::kick;
            const double share = share_mm(rest, side ? closed_may_end : may_end);
            if (share <= enough_mm) continue;
            shared = true;
            rest -= share;
            waiting += share;
            // What else goes counts on the open face: it is ground, or nothing is.
            if (waiting < rules_.least_off_mm && face != TangFace::open) continue;
            const double remove = std::exchange(waiting, 0.0);
            bench.plan.removed.of(face) += remove;
            add_step(bench, design, pass, face, remove);
        }
        return shared;
    }

    void add_step(Bench& bench, const Design& design, int pass, TangFace face, double remove_mm) {
        FitStep step = describe(subject(design, bench), bench.plan.removed, bench.start_tip_mm);
        step.step = static_cast<int>(steps_.size()) + 1;
        step.pass_number = bench.plan.passes = passes_ = pass;
        step.face = face;
        step.remove_mm = remove_mm;
        if (bench.plan.tip_mm) bench.plan.tip_mm = step.tip_mm;
        bench.plan.steps.push_back(step);
        steps_.push_back(std::move(step));
    }

    [[nodiscard]] BladesPlan finished() {
        BladesPlan all{.blades = {},
                       .steps = std::move(steps_),
                       .passes = passes_,
                       .aim_mm = benches_.front().plan.aim_mm,
                       .now = now_,
                       .done = now_};
        for (Bench& bench : benches_) {
            FitPlan& plan = bench.plan;
            Blade& blade = all.done.blades[bench.fitted.blade];
            blade = take_off(std::move(blade), plan.removed);
            plan.done = seen(bench, false, true);
            plan.tip_runs_out = bench.whole.runs_out;
            if (moves_tip(plan, rules_) && !rules_.tip_mm) {
                const Design design = seen(bench, true);
                plan.level_removed = level_removal(subject(design, bench));
            }
            plan.notices = plan_notices(plan, rules_);
        }
        for (Bench& bench : benches_) all.blades.push_back(std::move(bench.plan));
        return all;
    }

    const Design& now_;
    FitState state_;
    const PlanRules& rules_;
    std::vector<Bench> benches_;
    std::vector<FitStep> steps_;
    int passes_ = 0;
};

}  // namespace

BladesPlan fit_plan(const Design& now,
                    const std::vector<FittedBlade>& blades,
                    FitState state,
                    const PlanRules& rules) {
    Requirements broken;
    for (const FittedBlade& each : blades) plan_rules(broken, seen_from(now, each.blade), rules);
    broken.throw_if_any();
    return Planning(now, state, rules).plan(blades);
}

}  // namespace backspring
