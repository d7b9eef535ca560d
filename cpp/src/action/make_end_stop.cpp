#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "backspring/action/end_stop.hpp"
#include "backspring/core/angle.hpp"

namespace backspring {
namespace {

/// How far the end's face leans and the line sags between its place as fitted and bent: int v'^2/2,
/// which draws the end in.
double shortening_mm(const Joint& joint, const AxialPush& push, const Contact& contact) {
    double sum = 0.0, height = 0.0, from = 0.0;
    const auto go_to = [&](double x) {
        const double next = joint.face_slope * x + deflection_mm(joint, contact, x);
        sum += 0.5 * (next - height) * (next - height) / (x - from);
        height = next, from = x;
    };
    for (std::size_t i = 1; i < push.pieces.size(); ++i) go_to(push.pieces[i].x_mm);
    go_to(push.at_mm);
    return sum;
}

}  // namespace

double end_thickness_mm(const Spring& spring, const Pad& pad) {
    return thickness_mm(spring.thickness, std::nextafter(pad.end_mm, pad.start_mm));
}

double bearing_height_mm(const Stop& stop, double end_thickness_mm) {
    switch (stop.place) {
        case StopPlace::back:
            return end_thickness_mm;
        case StopPlace::belly:
            return 0.0;
        case StopPlace::height:
            return std::min(stop.height_mm, end_thickness_mm);
        case StopPlace::middle:
        case StopPlace::unstated:
            break;
    }
    return 0.5 * end_thickness_mm;
}

EndStop make_end_stop(const Spring& spring, const Joint& joint, const Stop& stop) {
    const Contact bent = contact_at(joint, joint.open_deg);
    const double end = joint.pad.end_mm;
    // Both sides of a step are asked in turn, and the face has none.
    constexpr double same_mm = 1e-12;
    double known_at = -1.0, known = 0.0;
    const auto face = [&](double x) {
        if (std::abs(x - known_at) <= same_mm) return known;
        known_at = x;
        known = joint.face_mm + joint.face_slope * x + deflection_mm(joint, bent, x);
        return known;
    };
    const double height = bearing_height_mm(stop, end_thickness_mm(spring, joint.pad));
    EndStop made{.push = {}, .height_mm = face(end) + height, .friction = stop.friction};
    const auto lever = [&](double x) {
        return made.height_mm - face(x) - mid_line_mm(spring, joint.pad, x);
    };
    made.push = make_axial_push(spring, joint.flexibility, end, lever);
    made.face_mm = stop.face_mm;
    made.bent_mm = deflection_mm(joint, bent, end);
    // Small turns about the lever's own, bent, line draw the end in by twice what the bent line
    // is longer than the straight one; half of that is real.
    made.end_mm = end - joint.pivot_mm - joint.face_slope * made.push.root_lever_mm() +
                  shortening_mm(joint, made.push, bent);
    if (made.face_mm) {
        Joint stopped = joint;
        stopped.stop = made;
        made.lean = std::tan(radians(open_on_stop(stopped).blade_angle_deg) - std::numbers::pi);
    }
    return made;
}

EndStop raised(EndStop stop, const Joint& joint, double by_mm) {
    stop.push = raised(std::move(stop.push), joint.flexibility, by_mm);
    stop.height_mm += by_mm;
    stop.end_mm -= joint.face_slope * by_mm;
    return stop;
}

}  // namespace backspring
