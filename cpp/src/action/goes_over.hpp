#pragma once

#include <optional>

#include "backspring/action/contact.hpp"

namespace backspring::detail {

/// A contact where a touch goes over from one way of bearing to another, as one and as the other.
struct BothSides {
    Contact low, high;
};

/// Where the one touch of a blade alone goes over between two contacts, from a part to the next or
/// to an edge of the pad: the face runs along the outline right there. None where more lies
/// between.
[[nodiscard]] std::optional<BothSides> goes_over(const Joint& joint,
                                                 const Contact& low,
                                                 const Contact& high);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
