#include "backspring/spring/root_give.hpp"

namespace backspring {

RootGive root_give(const FrameGive& give, double span_mm) {
    const double middle = give.middle_mm_per_n, rear = give.rear_mm_per_n;
    const double cross = give.cross_mm_per_n;
    return {
        .lift_mm_per_n = middle + give.pivot_mm_per_n,
        .turn_rad_per_n = (middle - cross) / span_mm,
        .turn_per_moment_per_nmm = (middle - 2.0 * cross + rear) / (span_mm * span_mm),
    };
}

RootGive far_root_give(const FrameGive& give, double span_mm) {
    return root_give({.middle_mm_per_n = give.rear_mm_per_n,
                      .rear_mm_per_n = give.middle_mm_per_n,
                      .cross_mm_per_n = give.cross_mm_per_n,
                      .pivot_mm_per_n = give.far_pivot_mm_per_n},
                     span_mm);
}

RootCross root_cross(const FrameGive& give, double span_mm) {
    const double middle = give.middle_mm_per_n, rear = give.rear_mm_per_n;
    const double cross = give.cross_mm_per_n;
    return {
        .lift_mm_per_n = cross,
        .lift_mm_per_nmm = (cross - middle) / span_mm,
        .turn_rad_per_n = (cross - rear) / span_mm,
        .turn_rad_per_nmm = (2.0 * cross - middle - rear) / (span_mm * span_mm),
    };
}

Flexibility with_root_give(Flexibility flexibility, const RootGive& give) {
    for (Stretch& stretch : flexibility.stretches) {
        stretch.upto.a1 -= give.turn_rad_per_n;
        stretch.upto.a2 += give.lift_mm_per_n;
    }
    flexibility.root_rotation_rad_per_nmm += give.turn_per_moment_per_nmm;
    return flexibility;
}

}  // namespace backspring
