#pragma once

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"
#include "backspring/spring/flexibility.hpp"

namespace backspring::detail {

/// The stretch on which a station ahead of the middle pin lies.
[[nodiscard]] inline const Stretch& stretch_at(const Flexibility& flexibility, double x_mm) {
    // The pad is at the end, so the search starts there.
    std::size_t i = flexibility.stretches.size() - 1;
    while (i > 0 && x_mm < flexibility.stretches[i].start_mm) --i;
    return flexibility.stretches[i];
}

inline void require_overhang(double x_mm) {
    if (!(x_mm >= 0.0)) {
        throw OutOfRange("station: must be at least 0 mm (ahead of the middle pin), got " +
                         with_unit(x_mm, "mm"));
    }
}

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
