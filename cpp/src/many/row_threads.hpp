#pragma once

#include <cstdint>
#include <functional>

namespace backspring::detail {

/// Runs rows in threads, a chunk at a time, while the calling thread asks whether to go on.
///
/// What a row makes must depend on the row alone. The first exception of a row is thrown on.
///
/// @param run         works rows from one to before another
/// @param keep_going  see check_many()
/// @returns           whether all rows were run
bool run_rows(std::int64_t rows,
              std::int64_t chunk_rows,
              int threads,
              const std::function<void(std::int64_t, std::int64_t)>& run,
              const std::function<bool(std::int64_t)>& keep_going);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
