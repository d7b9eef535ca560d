#pragma once

#include <Eigen/Core>

#include "backspring/spring/flexibility.hpp"

namespace backspring::detail {

/// Sections of a pierced stretch at several stations, of one mm of width.
template <int count>
struct NetSections {
    using Row = Eigen::Array<double, count, 1>;

    Row steel_mm;      ///< thickness less the hole's chord
    Row inertia_mm3;   ///< second moment of area about the centroid of what is left
    Row off_line_mm;   ///< that centroid from the mid-line, either way
    Row thickness_mm;  ///< square to the mid-line

    /// @param s_mm      from the stretch's start
    /// @param chord_mm  of the hole there
    NetSections(const Stretch& stretch, const Row& s_mm, const Row& chord_mm)
        : thickness_mm(stretch.cosine * (stretch.thickness_mm + stretch.taper * s_mm)) {
        const double offset = stretch.hole.offset_mm;
        steel_mm = thickness_mm - chord_mm;
        inertia_mm3 = (thickness_mm.cube() - chord_mm.cube()) / 12.0;
        off_line_mm = Row::Zero();
        if (offset == 0.0) return;
        off_line_mm = std::abs(offset) * chord_mm / steel_mm;
        inertia_mm3 -= std::abs(offset) * off_line_mm * thickness_mm;
    }
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
