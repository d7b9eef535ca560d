#include "backspring/action/joint.hpp"

#include <algorithm>
#include <numbers>
#include <utility>

#include "backspring/action/end_stop.hpp"

namespace backspring {
namespace {

// The closed face goes on ahead until no turn of the blade brings its end under the pad: at -45
// deg, the farthest turn, the end is (reach - closed)/sqrt(2) behind the pivot.
double closed_face_reach(const Pad& pad, const Tang& tang) {
    const double past_pad = std::numbers::sqrt2 * (tang.pivot_mm - pad.start_mm) + tang.closed_mm;
    return tang.kick ? std::max(past_pad, tang.kick->distance_mm + tang.kick->radius_mm) : past_pad;
}

/// The free face as it is fitted to the open tang, without play.
void fit_face(Joint& joint, const Tang& tang, const Fit& fit) {
    joint.face_mm = joint.open_mm = tang.open_mm;
    joint.face_slope = -fit.preload_mm / tang.pivot_mm;
}

}  // namespace

Joint make_joint(Flexibility flexibility, const Pad& pad, const Tang& tang, const Fit& fit) {
    Joint joint;
    joint.flexibility = std::move(flexibility);
    joint.outline = make_outline(tang, closed_face_reach(pad, tang));
    joint.pad = pad;
    joint.pivot_mm = tang.pivot_mm;
    joint.dial_mm = fit.dial_mm;
    fit_face(joint, tang, fit);
    return joint;
}

Joint make_joint(const Spring& spring, const Pad& pad, const Tang& tang, const Fit& fit) {
    Joint joint =
        with_clearances(make_joint(make_flexibility(spring), pad, tang, fit), spring, tang);
    if (fit.stop.place != StopPlace::unstated) joint.stop = make_end_stop(spring, joint, fit.stop);
    return joint;
}

Joint on_other_spring(
    Joint joint, Flexibility flexibility, const Spring& spring, const Tang& tang, const Fit& fit) {
    joint.flexibility = std::move(flexibility);
    fit_face(joint, tang, fit);
    return with_clearances(std::move(joint), spring, tang);
}

Joint with_clearances(Joint joint, const Spring& spring, const Tang& tang) {
    joint.face_mm += 0.5 * tang.pivot_clearance_mm;
    if (spring.support.kind != SupportKind::two_pins) return joint;
    const PinClearance& pins = spring.pin_clearance;
    joint.face_mm += 0.5 * pins.middle_mm;
    joint.face_slope += 0.5 * (pins.middle_mm + pins.rear_mm) / spring.support.rear_pin_mm;
    return joint;
}

Joint with_frame(Joint joint, const JointFrame& frame) {
    joint.flexibility =
        with_root_give(std::move(joint.flexibility), root_give(frame.give, frame.span_mm));
    joint.frame = frame;
    return joint;
}

double preload_lost_mm(const Spring& spring, const Tang& tang) {
    Joint at_rest{};
    const Joint moved = with_clearances(at_rest, spring, tang);
    return moved.face_mm + moved.face_slope * tang.pivot_mm;
}

Joint make_unloaded_joint(const Pad& pad, const Tang& tang, const Fit& fit) {
    // Any lean does: it only keeps the seating force positive. One radian is the simplest.
    const Fit seated{.preload_mm = tang.pivot_mm, .dial_mm = fit.dial_mm};
    return make_joint(free_rotation(), pad, tang, seated);
}

}  // namespace backspring
