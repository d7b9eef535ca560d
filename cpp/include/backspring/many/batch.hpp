#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "backspring/design/design.hpp"

namespace backspring {

/// How far the check of one of many designs came.
enum class RowStatus : std::uint8_t {
    ok,                 ///< works as a slip joint
    invalid,            ///< breaks a rule of a design; no results
    no_closed_rest,     ///< the blade does not stay closed
    no_half_stop_rest,  ///< the blade does not stay at its half-stop
    not_held_open,      ///< nothing holds the blade open
    lifted_off,         ///< the spring lets go of the tang at a rest or on the way
    out_of_bounds,      ///< a result asked for is impossible, see is_possible(); no results
    not_run,            ///< stopped before
};

/// Name of a status, as "no_closed_rest".
[[nodiscard]] std::string name_of(RowStatus status);

/// Values of one dimension, a row each.
struct Change {
    std::string key;        ///< see dimensions()
    Eigen::ArrayXd values;  ///< [mm], [MPa] or a ratio
};

/// One result of many designs.
struct BatchColumn {
    std::string name;       ///< with its unit, as "peak_pull_n"
    Eigen::ArrayXd values;  ///< a row each; NaN where a row has none
};

/// Results of many designs.
struct Batch {
    std::vector<BatchColumn> columns;  ///< as asked for
    std::vector<RowStatus> status;     ///< a row each
    bool complete = true;              ///< not stopped before its end
};

/// How many designs are worked through; no result depends on it.
struct BatchSettings {
    int threads = 0;                   ///< 0: as many as the machine has
    int chunk_rows = 256;              ///< rows a thread takes at a time
    std::vector<std::string> columns;  ///< names of those wanted; none: all
};

/// Names of all results that many designs can be asked for.
[[nodiscard]] std::vector<std::string> batch_columns();

/// Checks many designs that differ from one in some numbers.
///
/// Each row is what check() says of that design; only what its columns need is worked out. A row
/// depends on its own numbers only: the same to the last bit in any company and on any number of
/// threads. A bad row has a status and does not throw.
///
/// With several blades on the spring a row is about the own one, the worst of all positions of the
/// others: largest force, pull and stress, readings farthest from flush; angles and crests with the
/// others closed. It is ok where it is so in all of them.
///
/// "openings_margin" is there only where the design's targets ask for a life: it costs as much as
/// all else.
///
/// @param changes     at least one, all of one length, each key once
/// @param keep_going  asked by the calling thread with the number of rows done, several times a
///                    second and at the end; false stops, and rows not done say so
/// @throws InvalidInput  no such dimension or column, or the design has none to change
[[nodiscard]] Batch check_many(const Design& design,
                               const std::vector<Change>& changes,
                               const BatchSettings& settings = {},
                               const std::function<bool(std::int64_t)>& keep_going = {});

}  // namespace backspring
