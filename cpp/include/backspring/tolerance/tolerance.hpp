#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "backspring/tolerance/batch_chance.hpp"
#include "backspring/tolerance/local_spread.hpp"
#include "backspring/tolerance/sample_summary.hpp"
#include "backspring/tolerance/tolerance_rows.hpp"
#include "backspring/tolerance/variance_shares.hpp"

namespace backspring {

/// Spread of one result of a design.
struct ResultSpread {
    LocalSpread local;                  ///< slopes, root-sum-square, worst case
    SampleSummary sample;               ///< what the sample says
    std::vector<VarianceShare> shares;  ///< by spread; none when not asked for or nothing varies
};

/// A target and how many of the sample meet it.
struct TargetShare {
    std::string name;            ///< key in the design file's [targets]
    std::optional<double> low;   ///< least allowed
    std::optional<double> high;  ///< greatest allowed
    std::int64_t met = 0;        ///< rows of the sample
    bool stated = true;          ///< in the design file; a yield margin of 1 is judged unstated
};

/// What the bench's spreads do to a design.
struct Tolerance {
    std::vector<ResultSpread> results;  ///< pull or torque, stress, margin, loaded readings
    std::vector<TargetShare> targets;   ///< those the design states, and the yield margin
    std::int64_t rows = 0;              ///< of the sample, as far as it was run
    std::int64_t working = 0;           ///< rows that work as a slip joint
    std::int64_t good = 0;              ///< rows that work and meet every target
    std::optional<BatchChance> batch;   ///< chance that all knives of a batch meet the targets
    bool complete = true;               ///< not stopped before its end
};

/// How a tolerance study is made.
struct ToleranceSettings {
    std::int64_t rows = 100000;  ///< of the sample, 1 to 10 million
    std::uint32_t seed = 1;      ///< another one draws another sample
    std::int64_t pieces = 1;     ///< knives in a batch, at least 1
    bool with_shares = true;     ///< shares of variance: at most as many rows again
    int threads = 0;             ///< 0: as many as the machine has
};

/// Columns of check_many() that a study of this design needs: those whose spread it tells, and
/// "openings_margin" where a life is a target.
[[nodiscard]] std::vector<std::string> tolerance_columns(const Design& design);

/// Sums up a study whose rows have been checked, wherever that was done.
///
/// @param plan   rows as laid out
/// @param batch  checked for tolerance_columns(), a row each
[[nodiscard]] Tolerance sum_up(const Design& design,
                               const std::vector<Spread>& spreads,
                               const ToleranceRows& plan,
                               const Batch& batch,
                               std::int64_t pieces);

/// Worst case, root-sum-square and a quasi-random sample of a design under spreads.
///
/// The same for the same seed on any number of threads.
///
/// @param keep_going  see check_many()
/// @throws InvalidInput  see require_spreads(), or settings out of range
[[nodiscard]] Tolerance tolerance(const Design& design,
                                  const std::vector<Spread>& spreads,
                                  const ToleranceSettings& settings = {},
                                  const std::function<bool(std::int64_t)>& keep_going = {});

}  // namespace backspring
