#include "backspring/size/size.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"
#include "size_trial.hpp"

namespace backspring {
namespace {

constexpr std::size_t kMostStock = 1000;

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
    rules.require(!target.pull_n || design.blade.nail_nick_mm, "blade.nail_nick",
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
            result.limits = {"no design between the bounds works" +
                             (fault_.empty() ? "" : ": " + fault_)};
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
    [[nodiscard]] std::vector<std::string> limits(const Design& original,
                                                  const SizeAnswer& nearest) const {
        constexpr double at_limit = 1e-6;
        std::vector<std::string> told;
        const auto& target = wanted_.target;
        if (target.yield_margin) {
            const double least = *target.yield_margin, margin = nearest.yield_margin;
            if (margin < least * (1.0 - at_limit)) {
                told.push_back("yield_margin: no more than " + with_unit(margin, "") +
                               " can be had between the bounds");
            } else if (margin < least * (1.0 + at_limit)) {
                told.push_back("yield_margin: must be at least " + with_unit(least, ""));
            }
        }
        for (std::size_t i = 0; i < dimensions_.size(); ++i) {
            const SizeDimension& d = dimensions_[i];
            const double size = nearest.sizes_mm[i];
            if (!d.stock_mm.empty()) {
                told.push_back(d.key + ": comes in " + std::to_string(d.stock_mm.size()) +
                               " stock sizes, the nearest is " + with_unit(size, "mm"));
                continue;
            }
            const SizeBounds bounds = size_bounds(original, d);
            if (size <= bounds.low_mm * (1.0 + at_limit)) {
                told.push_back(d.key + ": must be at least " + with_unit(bounds.low_mm, "mm"));
            } else if (size >= bounds.high_mm * (1.0 - at_limit)) {
                told.push_back(d.key + ": must be at most " + with_unit(bounds.high_mm, "mm"));
            } else if (const std::string rule = rule_beside(nearest.design, d, size);
                       !rule.empty()) {
                told.push_back(rule);
            }
        }
        if (told.empty()) told.emplace_back("pull: turns back before it gets there");
        return told;
    }

    /// The rule that a design a little to either side breaks.
    [[nodiscard]] static std::string rule_beside(const Design& design,
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
    std::string fault_;
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
