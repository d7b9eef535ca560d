#include <algorithm>
#include <cmath>

#include "opening.hpp"

namespace backspring {
namespace {

constexpr int kMostRounds = 40;
// Rounds agree to so much of the set, each being found to a tenth of that.
constexpr double kAgreedShare = 1e-6, kAgreedMm = 1e-10, kFound = 0.1;
// A touch whose way with the face's slope is known is told so far from where it was found, as a
// share of the set.
constexpr double kToldShare = 0.3;
// A place is looked at again where the set is another by so much of it.
constexpr double kEnoughTold = 1e-3;
// So little turned tells nothing of how a touch goes with the slope.
constexpr double kLeastTurnRad = 1e-6;

double dot(const FaceShift& a, const FaceShift& b, const Pad& pad) {
    return a.at_mm(pad.start_mm) * b.at_mm(pad.start_mm) +
           a.at_mm(pad.end_mm) * b.at_mm(pad.end_mm);
}

double agreed_mm(double far_mm) { return kAgreedMm + kAgreedShare * far_mm; }

}  // namespace

/// How one touch holds the spring about a shift: as it does there, and as it goes between there and
/// the spring as fitted.
HeldPlace Opening::place_of(const Contact& contact,
                            const FaceShift& shift,
                            const Stop& stop) const {
    const Load load = *loads_ahead(contact).data();
    const Flexibility& flexibility = fitted_.joint.flexibility;
    const OwnCompliance own = own_compliance(flexibility, load.x_mm);
    HeldPlace place{.x_mm = load.x_mm,
                    .movement_mm = own.mm_per_n * load.force_n + shift.at_mm(load.x_mm),
                    .mm_per_n = own.mm_per_n,
                    .per_n = 2.0 * own.rad_per_n,
                    .slope = shift.slope};
    if (!stop.as_fitted || std::abs(shift.slope) < kLeastTurnRad) return place;
    const auto& [x, force] = *stop.as_fitted;
    const double before_mm = own_compliance(flexibility, x).mm_per_n * force;
    place.x_per_slope_mm = (load.x_mm - x) / shift.slope;
    place.movement_per_slope_mm = (place.movement_mm - before_mm) / shift.slope;
    return place;
}

/// The force of one touch, whose place follows the set.
Setting Opening::force_at(const HeldPlace& about, const Loads& guess, const Enough& enough) const {
    constexpr int most = 5;
    constexpr double rough = 1e-3;
    Setting setting = setting_force(plastic_, about, guess, {enough.mm, rough});
    for (int i = 0; i < most; ++i) {
        const FaceShift before = setting.set;
        setting = setting_force(plastic_, about.at_slope(before.slope), setting.loads, enough);
        if (std::abs(far_mm(setting.set) - far_mm(before)) <= kEnoughTold * far_mm(before)) break;
    }
    return setting;
}

/// Forces by the set, and places by the contact, in turn: a round's way is stretched by what the
/// round before left over.
///
/// @param shift   a guess of where the set will be
/// @param forces  a guess of the forces; none: as if nothing set further
/// @source B. M. Irons and R. C. Tuck, IJNME 1 (1969), a version of Aitken's accelerator
Opening::Held Opening::held_at(const Stop& stop, FaceShift shift, const Loads& forces) {
    const Pad& pad = fitted_.joint.pad;
    const double angle = stop.angle_deg;
    Contact contact = contact_in(moved_, shift, angle);
    std::optional<Joint> held;
    if (!fitted_.joint.alone()) held = with_others_held(fitted_.joint, contact);
    Joint& joint = held ? *held : moved_;
    int round = 0;
    const auto look = [&](FaceShift at, const FaceShift& from) {
        contact = contact_in(joint, at, angle);
        for (; loads_ahead(contact).size() == 0 && round < kMostRounds; ++round) {
            at = moved(from, 0.5, moved(at, -1.0, from));
            contact = contact_in(joint, at, angle);
        }
        return at;
    };
    if (loads_ahead(contact).size() == 0) shift = look(shift, shift_);
    if (loads_ahead(contact).size() == 0) return {{{}, shift_}};
    FaceShift miss;
    std::optional<HeldPlace> place;
    Setting by_now{forces, {}};
    for (double way = 1.0; round < kMostRounds; ++round) {
        const FaceShift last = miss;
        const Loads loads = loads_ahead(contact);
        const Enough enough{kFound * agreed_mm(far_mm(shift))};
        const bool one = loads.size() == 1 && stop.as_fitted;
        if (one) place = place_of(contact, shift, stop);
        by_now =
            one ? force_at(*place, by_now.loads, enough)
                : setting_forces(plastic_, joint.flexibility, loads, shift, by_now.loads, enough);
        miss = moved(by_now.set, -1.0, shift);
        const double off_mm = std::sqrt(dot(miss, miss, pad)), far = far_mm(by_now.set);
        const bool told = one && off_mm <= kToldShare * far;
        if (told) return {by_now, place};
        if (off_mm <= agreed_mm(far)) break;
        if (round > 0) {
            const FaceShift change = moved(miss, -1.0, last);
            const double changed = dot(change, change, pad);
            if (changed > 0.0) way = std::clamp(-way * dot(last, change, pad) / changed, 0.05, 2.0);
        }
        shift = look(moved(shift, way, miss), shift);
    }
    return {by_now};
}

/// The same after it was bent further meanwhile.
Opening::Held Opening::held_again(const Held& before, const Stop& stop) {
    if (!before.place) return held_at(stop, before.setting.set, before.setting.loads);
    const Enough enough{kFound * agreed_mm(far_mm(before.setting.set))};
    const HeldPlace about = before.place->at_slope(before.setting.set.slope);
    return {setting_force(plastic_, about, before.setting.loads, enough), before.place};
}

/// Bends it for good; whether that sets it further.
bool Opening::bend(const Setting& setting) {
    const double before_mm = far_mm(shift_);
    plastic_.bend(setting.loads);
    shift_ = setting.set;
    return far_mm(shift_) > before_mm + slight_mm();
}

}  // namespace backspring
