#include "backspring/size/size.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"
#include "size_trial.hpp"

namespace backspring {
namespace {

constexpr std::size_t kMostStock = 1000;
// Nearer than this share of a bound is at it.
constexpr double kAtLimit = 1e-6;

void require(const Design& design,
             const SizeTarget& target,
             const std::vector<SizeDimension>& dimensions) {
    if (std::vector<Fault> broken = faults(design); !broken.empty()) {
        throw InvalidInput(std::move(broken));
    }
    require_dimensions(design, dimensions);
    Requirements rules;
    rules.require(target.pull_n || target.yield_margin, "pull",
                  [] { return std::string("give a pull, a yield margin or both to size for"); });
    if (target.pull_n) rules.positive("pull", *target.pull_n, 1e4, "N");
    if (target.yield_margin) rules.positive("yield_margin", *target.yield_margin, 100.0, "");
    rules.require(!target.pull_n || design.own().blade.nail_nick_mm, "blade.nail_nick",
                  [] { return std::string("missing: a pull is felt at the nail nick"); });
    std::size_t open = 0, combinations = 1;
    for (const SizeDimension& d : dimensions) {
        if (d.stock_mm.empty())
            ++open;
        else
            combinations *= d.stock_mm.size();
    }
    rules.require(open <= 2, "vary", [] {
        return std::string("at most two dimensions can be free; give the others stock sizes");
    });
    rules.require(open < 2 || (target.pull_n && target.yield_margin), "vary", [] {
        return std::string("two free dimensions need both a pull and a yield margin");
    });
    rules.require(combinations <= kMostStock, "stock", [&] {
        return "must give at most " + std::to_string(kMostStock) + " combinations, got " +
               std::to_string(combinations);
    });
    rules.throw_if_any();
}

class Sizing {
  public:
    Sizing(const SizeTarget& target, const std::vector<SizeDimension>& dimensions)
        : wanted_{target}, dimensions_(dimensions) {}

    void run(const Design& design) { choose_stock(design, 0); }

    [[nodiscard]] SizeResult result(const Design& original) {
        SizeResult result;
        for (const Trial& trial : found_.answers) add_new(result.answers, answer(trial));
        if (!result.answers.empty()) return result;
        if (const Trial* nearest = nearest_of(found_.others, wanted_)) {
            result.nearest = answer(*nearest);
            result.limits = limits(original, *result.nearest);
        } else {
            result.limits = {{.code = NoticeCode::none_works}};
            if (fault_) result.limits.push_back(*fault_);
        }
        return result;
    }

  private:
    /// Goes through the stock sizes, one dimension after the other.
    void choose_stock(const Design& design, std::size_t i) {
        if (i == dimensions_.size()) {
            solve(design);
        } else if (dimensions_[i].stock_mm.empty()) {
            choose_stock(design, i + 1);
        } else {
            for (const double size : dimensions_[i].stock_mm) {
                choose_stock(with_size(design, dimensions_[i], size), i + 1);
            }
        }
    }

    void solve(const Design& design) {
        std::vector<FreeMeasure> free;
        for (const SizeDimension& d : dimensions_) {
            if (d.stock_mm.empty()) free.push_back({d, size_bounds(design, d)});
        }
        if (free.size() == 2) {
            found_.add(find_on_plane(design, free[0], free[1], wanted_));
        } else if (free.size() == 1) {
            const Line line = [&](double size) {
                return tried(with_size(design, free[0].dimension, size));
            };
            found_.add(find_on_line(line, free[0].bounds, wanted_));
        } else if (Trial trial = tried(design); trial.works()) {
            constexpr double met = 1e-6;
            const bool good = wanted_.strong_enough(trial) &&
                              (std::abs(wanted_.miss(trial)) < met ||
                               (!wanted_.target.pull_n && wanted_.spare(trial) >= 0.0));
            (good ? found_.answers : found_.others).push_back(std::move(trial));
        }
    }

    Trial tried(Design design) {
        Trial trial = try_design(std::move(design));
        if (!trial.works()) fault_ = trial.fault;
        return trial;
    }

    [[nodiscard]] SizeAnswer answer(const Trial& trial) const {
        SizeAnswer result{.design = trial.design,
                          .sizes_mm = {},
                          .pull_n = trial.pull_n,
                          .yield_margin = trial.yield_margin};
        for (const SizeDimension& d : dimensions_) {
            result.sizes_mm.push_back(size_of(trial.design, d));
        }
        return result;
    }

    static void add_new(std::vector<SizeAnswer>& answers, SizeAnswer answer) {
        constexpr double alike = 1e-6;
        for (const SizeAnswer& known : answers) {
            bool same = true;
            for (std::size_t i = 0; i < known.sizes_mm.size(); ++i) {
                const double apart = std::abs(known.sizes_mm[i] - answer.sizes_mm[i]);
                same = same && apart <= alike * known.sizes_mm[i];
            }
            if (same) return;
        }
        answers.push_back(std::move(answer));
    }

    /// What keeps the nearest design from what is wanted.
    [[nodiscard]] std::vector<Notice> limits(const Design& original,
                                             const SizeAnswer& nearest) const {
        std::vector<Notice> found;
        if (auto limit = margin_limit(nearest)) found.push_back(std::move(*limit));
        for (std::size_t i = 0; i < dimensions_.size(); ++i) {
            auto limit = size_limit(original, nearest, dimensions_[i], nearest.sizes_mm[i]);
            if (limit) found.push_back(std::move(*limit));
        }
        if (found.empty()) found.push_back({.code = NoticeCode::pull_turns_back});
        return found;
    }

    [[nodiscard]] std::optional<Notice> margin_limit(const SizeAnswer& nearest) const {
        if (!wanted_.target.yield_margin) return std::nullopt;
        const double least = *wanted_.target.yield_margin, margin = nearest.yield_margin;
        if (margin >= least * (1.0 + kAtLimit)) return std::nullopt;
        const bool short_of = margin < least * (1.0 - kAtLimit);
        return Notice{
            .code = short_of ? NoticeCode::margin_out_of_reach : NoticeCode::margin_at_limit,
            .parameters = {{"margin", short_of ? margin : least, Quantity::ratio}}};
    }

    [[nodiscard]] static std::optional<Notice> size_limit(const Design& original,
                                                          const SizeAnswer& nearest,
                                                          const SizeDimension& d,
                                                          double size) {
        const auto limit = [&](NoticeCode code, double mm) {
            return Notice{.code = code,
                          .parameters = {{"size", mm, Quantity::length}},
                          .names = {{"key", d.key}}};
        };
        if (!d.stock_mm.empty()) {
            Notice stock = limit(NoticeCode::stock_sizes, size);
            stock.parameters.push_back(
                {"sizes", static_cast<double>(d.stock_mm.size()), Quantity::count});
            return stock;
        }
        const SizeBounds bounds = size_bounds(original, d);
        if (size <= bounds.low_mm * (1.0 + kAtLimit)) {
            return limit(NoticeCode::least_size, bounds.low_mm);
        }
        if (size >= bounds.high_mm * (1.0 - kAtLimit)) {
            return limit(NoticeCode::greatest_size, bounds.high_mm);
        }
        return rule_beside(nearest.design, d, size);
    }

    /// The rule that a design a little to either side breaks.
    [[nodiscard]] static std::optional<Notice> rule_beside(const Design& design,
                                                           const SizeDimension& dimension,
                                                           double size) {
        constexpr double beside = 1e-5;
        for (const double share : {1.0 - beside, 1.0 + beside}) {
            const Trial trial = try_design(with_size(design, dimension, share * size));
            if (!trial.works()) return trial.fault;
        }
        return {};
    }

    Wanted wanted_;
    const std::vector<SizeDimension>& dimensions_;
    Found found_;
    std::optional<Notice> fault_;
};

}  // namespace

SizeResult size(const Design& design,
                const SizeTarget& target,
                const std::vector<SizeDimension>& dimensions) {
    require(design, target, dimensions);
    Sizing sizing(target, dimensions);
    sizing.run(design);
    return sizing.result(design);
}

}  // namespace backspring
