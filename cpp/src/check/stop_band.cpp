#include "backspring/check/stop_band.hpp"

#include <algorithm>
#include <vector>

#include "backspring/action/end_stop.hpp"
#include "backspring/check/feel.hpp"
#include "backspring/core/angle.hpp"

namespace backspring {
namespace {

// A stop whose friction all but holds the blade by itself has no lever to speak of.
constexpr double kLeastLever = 0.25;

void widen(std::optional<Ends>& ends, double value) {
    if (!ends) ends = Ends{value, value};
    ends->low = std::min(ends->low, value);
    ends->high = std::max(ends->high, value);
}

/// All that is asked of one way to bear after another.
struct Found {
    BeamPlace dial;
    double level_mm;  ///< of the dial as the design states it
    std::optional<Ends> stop_n{}, force_n{}, angle_deg{}, reading_mm{};

    void add(const Joint& joint, const Contact& open) {
        widen(stop_n, open.stop.force_n);
        widen(force_n, open.force_n);
        widen(angle_deg, open.blade_angle_deg);
        widen(reading_mm, level_mm - deflection_mm(joint, open, dial));
    }
};

/// As the blade stands at 180 deg, and as it leans on a face where the end was fitted: a turn so
/// small that the first step to it does.
///
/// @param plain  at 180 deg, without a stop
void add_both(Found& found, Joint& joint, const Contact& plain, double fitted_mm) {
    const Contact straight = leaning_from(joint, plain);
    found.add(joint, straight);
    joint.stop->face_mm = fitted_mm;
    const double left = stop_overlap_mm(joint, joint.open_deg) - end_gives_way_mm(joint, straight);
    const double turn = degrees(left / stop_lever_mm(joint, joint.open_deg));
    found.add(joint, leaning_near(joint, joint.open_deg - turn, plain));
    joint.stop->face_mm.reset();
}

}  // namespace

std::optional<StopBand> stop_band(Solution& solution) {
    const Contact& open = solution.rests().open;
    if (open.count == 0 || open.torque_nmm >= 0.0) return std::nullopt;
    const Design& design = solution.design();
    const Stop& stated = design.own().fit.stop;
    const double rubs = design.friction.spring;
    const double friction = rubs > 0.0 ? rubs : kUsualFriction;
    Joint joint = solution.joint();
    const BeamPlace dial = beam_place(joint.flexibility, joint.dial_mm);
    Found found{.dial = dial, .level_mm = deflection_mm(joint, open, dial)};
    Stop way = stated;
    // Of an unknown place the two ends: what is between lies between.
    const bool known = stated.place != StopPlace::unstated;
    if (!known) way = {.place = StopPlace::belly, .face_mm = stated.face_mm};
    const EndStop made = make_end_stop(design.spring, joint, way);
    const double thick = end_thickness_mm(design.spring, joint.pad);
    const Contact plain = open.blade_angle_deg == joint.open_deg
                              ? without_stop(joint, open)
                              : contact_at(joint, joint.open_deg);
    for (const double by : known ? std::vector{0.0} : std::vector{thick, 0.0}) {
        joint.stop = by == 0.0 ? made : raised(made, joint, by);
        for (const double drag : {-friction, friction}) {
            joint.stop->friction = drag;
            const double lever = stop_lever_mm(joint, joint.open_deg);
            if (lever < kLeastLever * joint.stop->height_mm) continue;
            if (stated.face_mm) {
                found.add(joint, open_on_stop(joint));
            } else {
                add_both(found, joint, plain, joint.pad.end_mm - joint.pivot_mm);
            }
        }
    }
    if (!found.reading_mm) return std::nullopt;
    return StopBand{.place = stated.place,
                    .face_stated = stated.face_mm.has_value(),
                    .friction = friction,
                    .stop_n = *found.stop_n,
                    .force_n = *found.force_n,
                    .blade_angle_deg = *found.angle_deg,
                    .reading_mm = *found.reading_mm};
}

}  // namespace backspring
