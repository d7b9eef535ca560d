#include <algorithm>
#include <cmath>

#include "backspring/core/root.hpp"
#include "size_trial.hpp"

namespace backspring {
namespace {

constexpr int kLineParts = 32;
constexpr int kEdgeRounds = 40;

struct Point {
    double size_mm;
    Trial trial;
};

class LineSearch {
  public:
    LineSearch(const Line& line, const SizeBounds& bounds, const Wanted& wanted)
        : line_(line), wanted_(wanted) {
        scan(bounds);
        turn_back();
        strongest();
        for (std::size_t i = 0; i + 1 < points_.size(); ++i) between(points_[i], points_[i + 1]);
        for (const Point& point : points_) look_at(point.trial);
    }

    [[nodiscard]] Found take() { return std::move(found_); }

  private:
    Point at(double size_mm) const { return {size_mm, line_(size_mm)}; }

    /// Points at equal ratios; where a rule begins to bite, the last that keeps it.
    void scan(const SizeBounds& bounds) {
        const double ratio = bounds.high_mm / bounds.low_mm;
        Point last = at(bounds.low_mm);
        for (int i = 1; i <= kLineParts; ++i) {
            const double size = i == kLineParts
                                    ? bounds.high_mm
                                    : bounds.low_mm * std::pow(ratio, i / double{kLineParts});
            Point next = at(size);
            if (last.trial.works()) points_.push_back(last);
            if (last.trial.works() != next.trial.works()) points_.push_back(edge(last, next));
            last = std::move(next);
        }
        if (last.trial.works()) points_.push_back(std::move(last));
    }

    Point edge(Point good, Point bad) const {
        if (!good.trial.works()) std::swap(good, bad);
        for (int round = 0; round < kEdgeRounds; ++round) {
            Point middle = at(0.5 * (good.size_mm + bad.size_mm));
            (middle.trial.works() ? good : bad) = std::move(middle);
        }
        return good;
    }

    double miss(const Point& point) const { return wanted_.miss(point.trial); }

    /// Adds the turning point where the miss comes nearest to nothing without changing sign.
    void turn_back() {
        std::vector<Point> turns;
        for (std::size_t i = 1; i + 1 < points_.size(); ++i) {
            const double before = miss(points_[i - 1]), here = miss(points_[i]);
            const double after = miss(points_[i + 1]);
            const double side = here > 0.0 ? -1.0 : 1.0;
            const bool one_side = before * here > 0.0 && here * after > 0.0;
            if (!one_side || side * here < side * before || side * here < side * after) continue;
            turns.push_back(at(find_maximum(
                [&](double size) {
                    const Point point = at(size);
                    return point.trial.works() ? side * miss(point) : side * here - 1.0;
                },
                points_[i - 1].size_mm, points_[i + 1].size_mm)));
        }
        for (Point& turn : turns) {
            if (turn.trial.works()) points_.push_back(std::move(turn));
        }
        std::sort(points_.begin(), points_.end(),
                  [](const Point& a, const Point& b) { return a.size_mm < b.size_mm; });
    }

    /// Adds the place with the most margin, which may rise above the wanted one between points.
    void strongest() {
        if (!wanted_.target.pull_n || !wanted_.target.yield_margin || points_.size() < 2) return;
        const auto weaker = [&](const Point& a, const Point& b) {
            return wanted_.spare(a.trial) < wanted_.spare(b.trial);
        };
        const auto best = std::max_element(points_.begin(), points_.end(), weaker);
        const double low = (best == points_.begin() ? best : best - 1)->size_mm;
        const double high = (best + 1 == points_.end() ? best : best + 1)->size_mm;
        Point top = at(find_maximum(
            [&](double size) {
                const Point point = at(size);
                return point.trial.works() ? wanted_.spare(point.trial) : -1.0;
            },
            low, high));
        if (!top.trial.works() || !weaker(*best, top)) return;
        points_.insert(top.size_mm < best->size_mm ? best : best + 1, std::move(top));
    }

    template <class Value>
    void solve(const Point& a, const Point& b, Value value) {
        const double low = value(a.trial), high = value(b.trial);
        if (!(low * high < 0.0)) return;
        const double size = find_root(
            [&](double s) {
                const Trial trial = line_(s);
                return trial.works() ? value(trial) : low;
            },
            a.size_mm, b.size_mm, low, high);
        const Trial trial = line_(size);
        if (trial.works()) look_at(trial);
    }

    void between(const Point& a, const Point& b) {
        solve(a, b, [&](const Trial& trial) { return wanted_.miss(trial); });
        // Where the margin becomes too small lies the nearest design, if there is no answer.
        if (wanted_.target.pull_n && wanted_.target.yield_margin) {
            solve(a, b, [&](const Trial& trial) { return wanted_.spare(trial); });
        }
    }

    void look_at(const Trial& trial) {
        constexpr double met = 1e-9;
        const bool answers = std::abs(wanted_.miss(trial)) < met && wanted_.strong_enough(trial);
        (answers ? found_.answers : found_.others).push_back(trial);
    }

    const Line& line_;
    const Wanted& wanted_;
    std::vector<Point> points_;
    Found found_;
};

}  // namespace

Found detail::find_on_line(const Line& line, const SizeBounds& bounds, const Wanted& wanted) {
    return LineSearch(line, bounds, wanted).take();
}

}  // namespace backspring
