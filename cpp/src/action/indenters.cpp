#include "indenters.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "bearing.hpp"
#include "places.hpp"

namespace backspring {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
// Shares of the distance between pin and pivot.
constexpr double kTouching = 3e-14;  // overlap below this is rounding
constexpr double kSettled = 3e-15;
constexpr double kSlow = 1e-9;
// Beside another touch a place that is so much better, as a share of the energy, is no better.
constexpr double kAsGood = 1e-9;
constexpr double kNear = 1e-4;
// What is left of a compliance beside a touch below this share is rounding.
constexpr double kHeldFast = 1e-12;
constexpr int kMostSettlings = 200;

using MaybeTouch = std::optional<Touch>;
using Numbers = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, 8, 1>;
using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, 8, 8>;

/// The spring with no other force on it.
struct FreeSpring {
    const Flexibility& flexibility;
    const Indenter& indenter;

    Answer operator()(double x) const {
        const Compliance own = compliance(flexibility, x, x);
        return {indenter.face_at_mm(x), indenter.face_slope, own.mm_per_n, own.rad_per_n};
    }
};

/// Touches that stay where they are, whatever else bears: their forces give way.
class Held {
  public:
    Held(const Flexibility& flexibility, std::span<const Borne> touches)
        : flexibility_(flexibility), touches_(touches) {
        const auto n = static_cast<Eigen::Index>(touches.size());
        overlaps_.resize(n);
        Square all(n, n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const Borne& borne = at(i);
            overlaps_[i] = borne.indenter->overlap_mm(borne.touch);
            for (Eigen::Index j = 0; j <= i; ++j) {
                all(i, j) = all(j, i) =
                    deflection_per_force(flexibility, borne.touch.x_mm, at(j).touch.x_mm);
            }
        }
        solver_.compute(all);
        forces_ = solver_.solve(overlaps_);
    }

    [[nodiscard]] const Numbers& forces_n() const { return forces_; }

    /// How the spring answers a indenter.
    [[nodiscard]] Answer answer(const Indenter& indenter, double x) const {
        const Compliance own = compliance(flexibility_, x, x);
        const auto n = static_cast<Eigen::Index>(touches_.size());
        Numbers moves(n), turns(n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const Compliance cross = compliance(flexibility_, x, at(i).touch.x_mm);
            moves[i] = cross.mm_per_n;
            turns[i] = cross.rad_per_n;
        }
        const Numbers shares = solver_.solve(moves);
        Answer answer{indenter.face_at_mm(x) + moves.dot(forces_),
                      indenter.face_slope + turns.dot(forces_), own.mm_per_n - shares.dot(moves),
                      own.rad_per_n - shares.dot(turns)};
        if (answer.mm_per_n < kHeldFast * own.mm_per_n) answer.mm_per_n = 0.0;
        return answer;
    }

  private:
    [[nodiscard]] const Borne& at(Eigen::Index i) const {
        return touches_[static_cast<std::size_t>(i)];
    }

    const Flexibility& flexibility_;
    std::span<const Borne> touches_;
    Numbers overlaps_, forces_;
    Eigen::LLT<Square> solver_;
};

/// The bearings of one end while they are being found.
class Search {
  public:
    Search(const Flexibility& flexibility, std::span<const Indenter* const> indenters)
        : flexibility_(flexibility), indenters_(indenters) {}

    void start(const Borne& first) { borne_ = {first}; }

    /// Brings in the indenter that stores most beside those that bear already; false when none
    /// would.
    bool add_one() {
        const Held held(flexibility_, borne_);
        std::optional<Borne> best;
        double most_nmm = 0.0;
        for (const Indenter* indenter : indenters_) {
            if (bears(indenter)) continue;
            if (!bears_with(*indenter) && !stands_out(*indenter, held)) continue;
            if (const auto touch = beside(*indenter, held, borne_, most_nmm))
                best = {indenter, *touch};
        }
        if (!best) return false;
        borne_.push_back(*best);
        borne_.back().touch.force_n = 0.0;
        push();
        return true;
    }

    /// Moves every place to where its force stores most.
    void settle() {
        // A face bent by other blades' forces is hollow: one place is right on it, and no other.
        if (one_of_each_blade() && move_together(flexibility_, borne_)) return;
        double last = kInfinity;
        for (int round = 0; round < kMostSettlings && borne_.size() > 1; ++round) {
            const double moved = settle_once(last);
            if (moved < kSettled || (moved < kSlow && moved >= last)) break;
            if (move_together(flexibility_, borne_) && moved < kNear) break;
            last = moved;
        }
    }

    [[nodiscard]] const std::vector<Borne>& borne() const { return borne_; }

  private:
    [[nodiscard]] bool bears_with(const Indenter& indenter) const {
        return std::ranges::any_of(borne_, [&](const Borne& b) {
            return b.indenter != &indenter && b.indenter->part.blade == indenter.part.blade;
        });
    }

    [[nodiscard]] bool one_of_each_blade() const {
        return std::ranges::none_of(borne_,
                                    [&](const Borne& b) { return bears_with(*b.indenter); });
    }

    /// Whether an indenter stands out of the face bent by other blades, by more than its dip.
    [[nodiscard]] bool stands_out(const Indenter& indenter, const Held& held) const {
        const auto spring = [&](double x) {
            Answer answer = held.answer(indenter, x);
            answer.mm_per_n = 0.0;  // no force of its own yet
            return answer;
        };
        const Range all{0.5 * indenter.pad.start_mm, kInfinity};
        const MaybeTouch deepest =
            BearingSearch(indenter.outline, indenter.pivot_mm, all, spring).on(indenter.pad);
        if (!deepest) return false;
        const double overlap = deepest->height_mm - spring(deepest->x_mm).face_mm;
        return overlap > kTouching * indenter.pivot_mm + dip_mm(indenter, held, deepest->x_mm);
    }

    [[nodiscard]] bool bears(const Indenter* indenter) const {
        return std::ranges::any_of(borne_, [&](const Borne& b) { return b.indenter == indenter; });
    }

    /// Where an indenter stores most on a spring so held, if more than so far: on either side of,
    /// or between, the touches; but it stays about its place where that is as good.
    [[nodiscard]] MaybeTouch beside(const Indenter& indenter,
                                    const Held& held,
                                    std::span<const Borne> touches,
                                    double& most_nmm,
                                    const Touch* now = nullptr,
                                    double settled_to = kInfinity) const {
        MaybeTouch best;
        const auto consider = [&](const Range& range, double worth) {
            const auto spring = [&](double x) { return held.answer(indenter, x); };
            const MaybeTouch touch =
                BearingSearch(indenter.outline, indenter.pivot_mm, range, spring).on(indenter.pad);
            if (!touch || touch->force_n <= 0.0) return;
            const double overlap = touch->height_mm - spring(touch->x_mm).face_mm;
            if (overlap <= kTouching * indenter.pivot_mm) return;
            if (!now && overlap <= dip_mm(indenter, held, touch->x_mm)) return;
            if (worth * touch->force_n * overlap <= most_nmm) return;
            most_nmm = worth * touch->force_n * overlap;
            best = touch;
        };
        std::vector<double> ends;
        for (const Borne& borne : touches) ends.push_back(borne.touch.x_mm);
        ends.push_back(0.5 * indenter.pad.start_mm);
        ends.push_back(kInfinity);
        std::ranges::sort(ends);
        if (now && settled_to < kNear) {
            consider(about(now->x_mm, ends, kNear * indenter.pivot_mm), 1.0);
            if (best) best->part = named(indenter, best->part);
            if (best) return best;
        }
        for (std::size_t i = ends.size() - 1; i > 0; --i) consider({ends[i - 1], ends[i]}, 1.0);
        if (best && now && std::abs(best->x_mm - now->x_mm) > kNear * indenter.pivot_mm) {
            consider(about(now->x_mm, ends, kNear * indenter.pivot_mm), 1.0 + kAsGood);
        }
        if (now) {
            const Answer answer = held.answer(indenter, now->x_mm);
            const double overlap = now->height_mm - answer.face_mm;
            if (overlap > 0.0 && answer.mm_per_n > 0.0 &&
                overlap * overlap / answer.mm_per_n > most_nmm * (1.0 + kAsGood)) {
                best = *now;
                best->force_n = overlap / answer.mm_per_n;
            }
        }
        if (best) best->part = named(indenter, best->part);
        return best;
    }

    /// How far the face dips beside the touches of other blades.
    [[nodiscard]] double dip_mm(const Indenter& indenter, const Held& held, double x) const {
        double dip = 0.0;
        for (std::size_t i = 0; i < borne_.size(); ++i) {
            if (borne_[i].indenter->part.blade == indenter.part.blade) continue;
            dip += shear_dip_mm(flexibility_, x, held.forces_n()[static_cast<Eigen::Index>(i)],
                                borne_[i].touch.x_mm);
        }
        return dip;
    }

    /// As far to both sides of a place as the touches beside it leave room.
    static Range about(double place, const std::vector<double>& ends, double reach) {
        Range range{place - reach, place + reach};
        for (const double end : ends) {
            if (end <= place) range.start_mm = std::max(range.start_mm, end);
            if (end >= place) range.end_mm = std::min(range.end_mm, end);
        }
        return range;
    }

    static Part named(const Indenter& indenter, Part part) {
        part.blade = indenter.part.blade;
        part.kick = indenter.part.kick;
        return part;
    }

    /// Forces that keep all places in touch; those that would pull are let go on the way there.
    void push() {
        while (!borne_.empty()) {
            const Held held(flexibility_, borne_);
            const Numbers& goal = held.forces_n();
            double way = 1.0;
            std::size_t first = borne_.size();
            for (std::size_t i = 0; i < borne_.size(); ++i) {
                const double now = borne_[i].touch.force_n, then = goal[static_cast<int>(i)];
                if (then > 0.0) continue;
                const double share = now > then ? now / (now - then) : 0.0;
                if (share <= way) way = share, first = i;
            }
            for (std::size_t i = 0; i < borne_.size(); ++i) {
                double& force = borne_[i].touch.force_n;
                force = first == borne_.size() ? goal[static_cast<int>(i)]
                                               : force + way * (goal[static_cast<int>(i)] - force);
            }
            if (first == borne_.size()) return;
            borne_.erase(borne_.begin() + static_cast<std::ptrdiff_t>(first));
        }
    }

    /// @returns  the longest way that a place moved, as a share of the distance to its pivot
    double settle_once(double settled_to) {
        double moved = 0.0;
        for (std::size_t i = 0; i < borne_.size() && borne_.size() > 1; ++i) {
            const Borne own = borne_[i];
            std::vector<Borne> rest = borne_;
            rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
            double most_nmm = 0.0;
            const Held held(flexibility_, rest);
            const MaybeTouch touch =
                beside(*own.indenter, held, rest, most_nmm, &own.touch, settled_to);
            if (!touch) {
                borne_ = rest;
                push();
                return kInfinity;
            }
            moved =
                std::max(moved, std::abs(touch->x_mm - own.touch.x_mm) / own.indenter->pivot_mm);
            borne_[i].touch = *touch;
            const std::size_t count = borne_.size();
            push();
            if (borne_.size() < count) return kInfinity;
        }
        return moved;
    }

    const Flexibility& flexibility_;
    std::span<const Indenter* const> indenters_;
    std::vector<Borne> borne_;
};

/// Whether the top of a kick reaches the free face anywhere.
bool in_reach(const Indenter& kick) {
    const SurfacePoint top = kick.outline.at_slope(0, 0.0);
    const double x = kick.pivot_mm + top.x_mm, r = kick.outline.radius_mm(0);
    if (x + r <= kick.pad.start_mm || x - r >= kick.pad.end_mm) return false;
    return top.y_mm > kick.face_at_mm(x) - std::abs(kick.face_slope) * r;
}

double energy_nmm(const Borne& borne) {
    return 0.5 * borne.touch.force_n * borne.indenter->overlap_mm(borne.touch);
}

}  // namespace

void detail::add_indenters(std::vector<Indenter>& indenters,
                           const Mounted& tang,
                           int blade,
                           double blade_angle_deg) {
    const double turn = radians(blade_angle_deg) - std::numbers::pi;
    const auto add = [&](std::span<const Arc> arcs, bool kick) {
        indenters.push_back({TurnedOutline(arcs, turn), tang.pivot_mm, tang.pad, tang.face_mm,
                             tang.face_slope, Part{.blade = blade, .kick = kick}});
    };
    add(tang.outline.body, false);
    if (tang.outline.kick) add({&*tang.outline.kick, 1}, true);
}

MaybeTouch detail::bear_alone(const Flexibility& flexibility, const Indenter& indenter) {
    const FreeSpring spring{flexibility, indenter};
    const Range range{0.5 * indenter.pad.start_mm, kInfinity};
    MaybeTouch touch =
        BearingSearch(indenter.outline, indenter.pivot_mm, range, spring).on(indenter.pad);
    if (!touch || !(touch->force_n > 0.0)) return std::nullopt;
    touch->part.blade = indenter.part.blade;
    touch->part.kick = indenter.part.kick;
    return touch;
}

std::vector<Borne> detail::bear(const Flexibility& flexibility,
                                std::span<const Indenter> indenters) {
    std::vector<const Indenter*> within;
    std::optional<Borne> strongest;
    for (const Indenter& indenter : indenters) {
        if (indenter.part.kick && !in_reach(indenter)) continue;
        within.push_back(&indenter);
        const MaybeTouch touch = bear_alone(flexibility, indenter);
        if (!touch) continue;
        const Borne borne{&indenter, *touch};
        if (!strongest || energy_nmm(borne) > energy_nmm(*strongest)) strongest = borne;
    }
    if (!strongest) return {};
    // A rigid spring rests on what turns it farthest, and nothing else can reach it.
    if (within.size() == 1 || flexibility.rigid()) return {*strongest};
    Search search(flexibility, within);
    search.start(*strongest);
    for (int round = 0; round < kMostSettlings && search.add_one(); ++round) search.settle();
    return search.borne();
}

}  // namespace backspring
