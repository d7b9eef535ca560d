#include "leaning.hpp"

#include <cmath>
#include <limits>

#include "bearing.hpp"

namespace backspring {
namespace {

/// The spring under a tang whose torque its stop takes up: R = -P (X + s w)/lever, so that what the
/// stop does goes with the tang's own force.
struct LeaningSpring {
    const Joint& joint;
    double lever_mm;

    Answer operator()(double x, const SurfacePoint& point) const {
        const BeamPlace place = beam_place(joint.flexibility, x);
        const Compliance own = compliance(joint.flexibility, place, place);
        const Compliance by_stop = Pushed{joint.flexibility, *joint.stop, 1.0}.at(place);
        const double share = -stop_share(x - joint.pivot_mm, point.slope, point.y_mm);
        return {joint.face_mm + joint.face_slope * x, joint.face_slope,
                own.mm_per_n + share * by_stop.mm_per_n, own.rad_per_n + share * by_stop.rad_per_n};
    }

    /// Force of the tang that the stop takes, towards opening.
    [[nodiscard]] double stop_share(double x, double slope, double height) const {
        return (x + slope * height) / lever_mm;
    }
};

/// About how fast the loaded face and the part that bears part company along that, without a stop;
/// see BearingSearch::near().
double rate_at(const Joint& joint, const Indenter& body, const Touch& touch) {
    const OwnCompliance own = own_compliance(joint.flexibility, touch.x_mm);
    const double turned = touch.force_n * own.rad_per_n;
    const double steeper = touch.slope - body.face_slope - 2.0 * turned;
    const double per_mm = steeper / own.mm_per_n * own.rad_per_n + touch.force_n * own.rad_per_nmm;
    if (touch.part.flat) return -per_mm;
    const double steep = 1.0 + touch.slope * touch.slope;
    const double radius = body.outline.radius_mm(touch.part.arc);
    return -1.0 - per_mm * radius / (steep * std::sqrt(steep));
}

}  // namespace

std::optional<Leaning> detail::leaning_touch(const Joint& joint,
                                             const Indenter& body,
                                             const Touch& plain,
                                             double lever_mm) {
    const LeaningSpring spring{joint, lever_mm};
    const Range range{0.5 * joint.pad.start_mm, std::numeric_limits<double>::infinity()};
    const BearingSearch search(body.outline, joint.pivot_mm, range, spring);
    const double rate = rate_at(joint, body, plain);
    auto touch = rate < 0.0 ? search.near(joint.pad, plain, rate) : std::nullopt;
    if (!touch) touch = search.on(joint.pad);
    if (!touch) return std::nullopt;
    const double share =
        spring.stop_share(touch->x_mm - joint.pivot_mm, touch->slope, touch->height_mm);
    return Leaning{*touch, -touch->force_n * share};
}

}  // namespace backspring
