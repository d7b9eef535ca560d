#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "backspring/action/end_stop.hpp"
#include "backspring/core/angle.hpp"

namespace backspring {
namespace {

/// The face of the end's line as it is bent, walked along: how far the end's face leans and the
/// line sags between its place as fitted and bent draws the end in by int v'^2/2.
class BentFace {
  public:
    BentFace(const Joint& joint, const Contact& bent) : joint_(joint), bent_(bent) {}

    /// How high it stands above where the drawn spring's has it at the pin.
    double go_to(const BeamPlace& place) {
        const double x = place.x_mm;
        const double next = joint_.face_slope * x + deflection_mm(joint_, bent_, place);
        if (x > from_) shortening_ += 0.5 * (next - height_) * (next - height_) / (x - from_);
        height_ = next, from_ = x;
        return next;
    }

    [[nodiscard]] double shortening_mm() const { return shortening_; }

  private:
    const Joint& joint_;
    const Contact& bent_;
    double shortening_ = 0.0, height_ = 0.0, from_ = 0.0;
};

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
    const double height = bearing_height_mm(stop, end_thickness_mm(spring, joint.pad));
    EndStop made{.push = {}, .height_mm = 0.0, .friction = stop.friction};
    made.bent_mm = deflection_mm(joint, bent, end);
    made.height_mm = joint.face_mm + joint.face_slope * end + made.bent_mm + height;
    BentFace face(joint, bent);
    const auto lever = [&](const BeamPlace& place) {
        const double above_face = made.height_mm - joint.face_mm - face.go_to(place);
        return above_face - mid_line_mm(spring, joint.pad, place.x_mm);
    };
    made.push = axial_push_by_places(spring, joint.flexibility, end, lever);
    made.face_mm = stop.face_mm;
    // Small turns about the lever's own, bent, line draw the end in by twice what the bent line
    // is longer than the straight one; half of that is real.
    made.end_mm =
        end - joint.pivot_mm - joint.face_slope * made.push.root_lever_mm() + face.shortening_mm();
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
