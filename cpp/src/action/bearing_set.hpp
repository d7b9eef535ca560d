#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "held.hpp"
#include "places.hpp"
#include "stands_out.hpp"

namespace backspring::detail {

/// Whether no two of those that bear are body and kick of one blade.
[[nodiscard]] inline bool one_of_each_blade(const std::vector<Borne>& borne) {
    for (std::size_t i = 1; i < borne.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (borne[i].touch.part.blade == borne[j].touch.part.blade) return false;
        }
    }
    return true;
}

/// Whether several bear on flats: the one that stores most decides whether another one does.
[[nodiscard]] inline bool flats_side_by_side(const std::vector<Borne>& borne) {
    return std::ranges::count_if(borne, [](const Borne& b) { return b.touch.part.flat; }) > 1;
}

/// The bearings of one end while they are being found.
class BearingSet {
  public:
    BearingSet(const Flexibility& flexibility, std::span<const Indenter* const> indenters)
        : flexibility_(flexibility), indenters_(indenters) {}

    void start(std::vector<Borne> first) { borne_ = std::move(first); }

    /// Brings in the indenter that stores most beside those that bear already; false when none
    /// would.
    bool add_one() {
        const Held held(flexibility_, borne_);
        std::optional<Borne> best;
        double most_nmm = 0.0;
        for (const Indenter* indenter : indenters_) {
            if (bears(indenter)) continue;
            if (!bears_with(*indenter) && !stands_out(flexibility_, *indenter, held, borne_))
                continue;
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
        if (one_of_each_blade(borne_) && move_together(flexibility_, borne_)) return;
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
    static constexpr double kInfinity = std::numeric_limits<double>::infinity();
    // Shares of the distance between pin and pivot.
    static constexpr double kSettled = 3e-15;
    static constexpr double kSlow = 1e-9;
    // Beside another touch a place that is so much better, as a share of the energy, is no better.
    static constexpr double kAsGood = 1e-9;
    static constexpr double kNear = 1e-4;
    static constexpr int kMostSettlings = 200;

    [[nodiscard]] bool bears_with(const Indenter& indenter) const {
        return std::ranges::any_of(borne_, [&](const Borne& b) {
            return b.indenter != &indenter && b.indenter->part.blade == indenter.part.blade;
        });
    }

    [[nodiscard]] bool bears(const Indenter* indenter) const {
        return std::ranges::any_of(borne_, [&](const Borne& b) { return b.indenter == indenter; });
    }

    /// Where an indenter stores most on a spring so held, if more than so far: on either side of,
    /// or between, the touches; but it stays about its place where that is as good.
    [[nodiscard]] std::optional<Touch> beside(const Indenter& indenter,
                                              const Held& held,
                                              std::span<const Borne> touches,
                                              double& most_nmm,
                                              const Touch* now = nullptr,
                                              double settled_to = kInfinity) const {
        std::optional<Touch> best;
        const auto consider = [&](const Range& range, double worth) {
            const auto spring = [&](double x) { return held.answer(indenter, x); };
            const BearingSearch search(indenter.outline, indenter.pivot_mm, range, spring);
            const std::optional<Touch> touch = search.on(indenter.pad);
            if (!touch || touch->force_n <= 0.0) return;
            const double overlap = touch->height_mm - spring(touch->x_mm).face_mm;
            if (!stands_in(indenter, overlap)) return;
            if (!now && is_in_dip(flexibility_, indenter, held, borne_, *touch, overlap)) return;
            if (worth * touch->force_n * overlap <= most_nmm) return;
            if (now && cut_off(touch->x_mm, range, indenter)) return;
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

    /// Whether a place is one only because the range about an older place ends there.
    static bool cut_off(double x, const Range& range, const Indenter& indenter) {
        if (x == indenter.pad.start_mm || x == indenter.pad.end_mm) return false;
        const double close = kAsGood * indenter.pivot_mm;
        return range.end_mm - range.start_mm <= 2.0 * kNear * indenter.pivot_mm &&
               (x - range.start_mm < close || range.end_mm - x < close);
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

    /// Forces that keep all places in touch; those that would pull are let go on the way there.
    void push() {
        while (!borne_.empty()) {
            const Held held(flexibility_, borne_);
            const Held::Numbers& goal = held.forces_n();
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
            const std::optional<Touch> touch =
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

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
