#include "backspring/design/joint_of.hpp"

#include <algorithm>
#include <numeric>

#include "backspring/action/end_stop.hpp"
#include "backspring/action/rest.hpp"

namespace backspring {
namespace {

Joint joint_alone(const Spring& spring, const Blade& blade) {
    return make_joint(spring, blade.pad, blade.tang, blade.fit);
}

Neighbour neighbour(const Spring& spring, const Blade& blade) {
    Neighbour other{.tang = joint_alone(spring, blade), .standing = {180.0, 0.0}};
    if (blade.stands == Stand::closed) {
        other.standing = {0.0, kClosedReachDeg};
        if (blade.tang.kick) {
            const auto rest = rest_near(joint_alone(spring, blade), 0.0, kClosedReachDeg);
            other.seat_deg = rest ? rest->blade_angle_deg : 0.0;
        } else {
            other.seat_mm = blade.tang.closed_mm;
        }
    } else if (blade.stands == Stand::half_stop && blade.tang.half_stop_mm) {
        other.standing = {90.0, kHalfStopReachDeg};
        other.seat_mm = *blade.tang.half_stop_mm;
    }
    return other;
}

bool bears_at_both_ends(const Design& design) {
    return std::ranges::any_of(design.blades,
                               [&](const Blade& b) { return b.end != design.own().end; });
}

FarEnd far_end(const Design& design, const std::optional<JointFrame>& frame) {
    const bool pinned = design.spring.support.kind == SupportKind::two_pins;
    const Spring turned = turned_round(design.spring);
    FarEnd far{.flexibility = make_flexibility(turned), .blades = {}, .turns = !pinned};
    if (pinned) {
        far.span_mm = design.spring.support.rear_pin_mm;
        far.cross_rad_per_nmm = cross_rotation_rad_per_nmm(design.spring);
    }
    if (frame) {
        far.flexibility =
            with_root_give(std::move(far.flexibility), far_root_give(frame->give, frame->span_mm));
        far.through_frame = root_cross(frame->give, frame->span_mm);
        far.cross_rad_per_nmm += far.through_frame->turn_rad_per_nmm;
    }
    for (const Blade& blade : design.blades) {
        if (blade.end != design.own().end) far.blades.push_back(neighbour(turned, blade));
    }
    return far;
}

}  // namespace

Flexibility make_flexibility(const Design& design) { return flexibility_from({}, design); }

Flexibility flexibility_from(std::span<const WholeStretch> known, const Design& design) {
    Flexibility flexibility = flexibility_from(known, design.spring);
    const auto frame = frame_of(design);
    return frame ? with_root_give(std::move(flexibility), root_give(frame->give, frame->span_mm))
                 : flexibility;
}

Joint make_joint_alone(const Design& design) {
    Joint joint = joint_alone(design.spring, design.own());
    const auto frame = frame_of(design);
    if (!frame) return joint;
    joint = with_frame(std::move(joint), *frame);
    // The stop's force is taken by pins that give, too.
    const Stop& stop = design.own().fit.stop;
    if (joint.stop) joint.stop = make_end_stop(design.spring, joint, stop);
    return joint;
}

Joint make_joint(const Design& design) {
    Joint joint = make_joint_alone(design);
    for (std::size_t i = 1; i < design.blades.size(); ++i) {
        const Blade& blade = design.blades[i];
        if (blade.end == design.own().end) joint.beside.push_back(neighbour(design.spring, blade));
    }
    if (bears_at_both_ends(design)) joint.far_end = far_end(design, joint.frame);
    return joint;
}

std::vector<std::size_t> blades_in_joint(const Design& design) {
    std::vector<std::size_t> places(design.blades.size());
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::stable_partition(places.begin(), places.end(),
                          [&](std::size_t i) { return design.blades[i].end == design.own().end; });
    return places;
}

bool on_own_pin(const Design& design, const Blade& blade) {
    return blade.end == design.own().end && blade.tang.pivot_mm == design.own().tang.pivot_mm;
}

double bearing_width_mm(const Design& design) {
    const auto here = [&](const Blade& blade) { return on_own_pin(design, blade); };
    const Pad& pad = design.own().pad;
    const double narrowest =
        std::min(width_at_mm(design.spring, pad.start_mm), width_at_mm(design.spring, pad.end_mm));
    return narrowest / static_cast<double>(std::ranges::count_if(design.blades, here));
}

Joint make_unloaded_joint(const Design& design) {
    const Blade& own = design.own();
    Joint joint = make_unloaded_joint(own.pad, own.tang, own.fit);
    if (own.fit.stop.place != StopPlace::unstated && own.fit.stop.face_mm) {
        joint.open_deg = unloaded_open_deg(design.spring, joint, own.fit.stop);
    }
    return joint;
}

StressProbe make_stress_probe(const Design& design) {
    StressProbe probe = make_stress_probe(design.spring);
    if (!bears_at_both_ends(design)) return probe;
    return with_other_end(std::move(probe), design.spring);
}

}  // namespace backspring
