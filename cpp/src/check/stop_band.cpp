#include "backspring/check/stop_band.hpp"

#include <algorithm>
#include <vector>

#include "backspring/action/end_stop.hpp"
#include "backspring/check/feel.hpp"

namespace backspring {
namespace {

// A stop whose friction all but holds the blade by itself has no lever to speak of.
constexpr double kLeastLever = 0.25;

std::vector<Stop> ways_to_bear(const Stop& stated) {
    if (stated.place != StopPlace::unstated) return {stated};
    std::vector<Stop> ways;
    for (const StopPlace place : {StopPlace::back, StopPlace::middle, StopPlace::belly}) {
        ways.push_back({.place = place, .face_mm = stated.face_mm});
    }
    return ways;
}

void widen(std::optional<Ends>& ends, double value) {
    if (!ends) ends = Ends{value, value};
    ends->low = std::min(ends->low, value);
    ends->high = std::max(ends->high, value);
}

/// All that is asked of one way to bear after another.
struct Found {
    std::optional<Ends> stop_n, force_n, angle_deg, reading_mm;

    void add(const Joint& joint, double datum_mm) {
        const Contact open = open_on_stop(joint);
        widen(stop_n, open.stop.force_n);
        widen(force_n, open.force_n);
        widen(angle_deg, open.blade_angle_deg);
        widen(reading_mm, datum_mm - open_datum_mm(joint, open));
    }
};

}  // namespace

std::optional<StopBand> stop_band(Solution& solution) {
    const Rests& rests = solution.rests();
    if (rests.open.count == 0 || rests.open.torque_nmm >= 0.0) return std::nullopt;
    const Design& design = solution.design();
    const Stop& stated = design.own().fit.stop;
    const Friction& rubbing = design.friction;
    const double friction = rubbing.spring > 0.0 ? rubbing.spring : kUsualFriction;
    const double fitted = design.own().pad.end_mm - design.own().tang.pivot_mm;
    const double datum = open_datum_mm(solution.joint(), rests.open);
    std::vector<std::optional<double>> faces{stated.face_mm};
    if (!stated.face_mm) faces.emplace_back(fitted);
    Found found;
    Joint joint = solution.joint();
    for (const Stop& way : ways_to_bear(stated)) {
        joint.stop = make_end_stop(design.spring, joint, way);
        for (const double drag : {-friction, 0.0, friction}) {
            joint.stop->friction = drag;
            for (const auto& face : faces) {
                joint.stop->face_mm = face;
                const double lever = stop_lever_mm(joint, joint.open_deg);
                if (lever > kLeastLever * joint.stop->height_mm) found.add(joint, datum);
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
