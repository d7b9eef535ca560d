#include "abreast.hpp"

#include <algorithm>
#include <cmath>

#include "neighbours.hpp"
#include "newton_steps.hpp"

namespace backspring {
namespace {

constexpr int kLooksAbreast = 8;
// What a step so short leaves is rounding.
constexpr double kLastStepAbreast = 1e-7;
// And what is left then is less than this.
constexpr double kLeftAbreast = 1e-11;

}  // namespace

detail::TouchesAbreast::TouchesAbreast(const Joint& joint,
                                       const Part& part,
                                       std::span<const double> angles_deg,
                                       std::span<const double> guesses)
    : joint_(joint), part_(part), angles_deg_(angles_deg) {
    std::ranges::copy(guesses, place_.begin());
    find_out_parts();
    settle();
}

void detail::TouchesAbreast::find_out_parts() {
    const int arc = part_.arc;
    for (std::size_t i = 0; i < angles_deg_.size(); ++i) {
        const Indenter& body = bodies_[i].emplace(body_of(joint_, 0, angles_deg_[i]));
        const TurnedOutline& outline = body.outline;
        if (part_.flat) {
            slope_[i] = outline.highest_slope(arc);
            const SurfacePoint front = outline.at_slope(arc, slope_[i]);
            front_mm_[i] = front.x_mm;
            rear_mm_[i] = outline.at_slope(arc + 1, slope_[i]).x_mm;
            from_y_mm_[i] = front.y_mm - slope_[i] * front.x_mm;
        } else {
            const SurfacePoint crown = outline.at_slope(arc, 0.0);
            from_x_mm_[i] = crown.x_mm;
            from_y_mm_[i] = crown.y_mm - outline.radius_mm(arc);
        }
    }
}

void detail::TouchesAbreast::settle() {
    const std::size_t n = angles_deg_.size();
    bool last = false;
    for (int round = 0; round < kLooksAbreast; ++round) {
        if (!look()) break;
        if (last) return;
        double longest = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            longest = std::max(longest, std::abs(step_[i]));
            place_[i] += step_[i];
        }
        last = longest <= kLastStepAbreast;
    }
    step_.fill(1.0);
}

/// The spring under a force at each place, and the next step from there.
bool detail::TouchesAbreast::look() {
    const std::size_t n = angles_deg_.size();
    const double radius = part_.flat ? 0.0 : bodies_[0]->outline.radius_mm(part_.arc);
    Numbers steep, out;
    for (std::size_t i = 0; i < n; ++i) {
        if (part_.flat) {
            station_mm_[i] = joint_.pivot_mm + place_[i];
            height_mm_[i] = from_y_mm_[i] + slope_[i] * place_[i];
        } else {
            slope_[i] = place_[i];
            steep[i] = 1.0 + slope_[i] * slope_[i];
            out[i] = radius / std::sqrt(steep[i]);
            station_mm_[i] = joint_.pivot_mm + from_x_mm_[i] - slope_[i] * out[i];
            height_mm_[i] = from_y_mm_[i] + out[i];
        }
    }
    if (!own_compliances(joint_.flexibility, {station_mm_.data(), n}, own_)) return false;
    for (std::size_t i = 0; i < n; ++i) {
        overlap_mm_[i] = height_mm_[i] - (joint_.face_mm + joint_.face_slope * station_mm_[i]);
        const Pressed pressed = press(overlap_mm_[i], slope_[i] - joint_.face_slope,
                                      own_.mm_per_n[i], own_.rad_per_n[i], own_.rad_per_nmm[i]);
        force_n_[i] = pressed.force_n;
        step_[i] = part_.flat ? -pressed.miss / pressed.slope_rate
                              : pressed.miss * steep[i] / (pressed.slope_rate * out[i] + steep[i]);
    }
    return true;
}

/// Whether a place lies on the part, within the pad and on the smooth stretch.
bool detail::TouchesAbreast::on_part(std::size_t i) const {
    const double x = station_mm_[i];
    const Pad& pad = joint_.pad;
    if (!(x > pad.start_mm && x < pad.end_mm && x >= own_.from_mm && x <= own_.to_mm)) return false;
    return part_.flat ? place_[i] > rear_mm_[i] && place_[i] < front_mm_[i]
                      : bodies_[i]->outline.surely_has(part_.arc, place_[i]);
}

bool detail::TouchesAbreast::tell(std::size_t i, Contact& contact) const {
    const Indenter& body = *bodies_[i];
    if (!(std::abs(step_[i]) <= kLeftAbreast) || !on_part(i)) return false;
    if (!(force_n_[i] > 0.0 && stands_in(body, overlap_mm_[i]))) return false;
    const Touch touch{.x_mm = station_mm_[i],
                      .height_mm = height_mm_[i],
                      .slope = slope_[i],
                      .force_n = force_n_[i],
                      .part = named(body, {.arc = part_.arc, .flat = part_.flat})};
    if (!kick_clears(joint_, body, touch)) return false;
    contact.blade_angle_deg = angles_deg_[i];
    add_touch(contact, body, touch);
    return true;
}

}  // namespace backspring
