#include "blades.hpp"

#include <cmath>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "neighbours.hpp"
#include "twins.hpp"

namespace backspring {
namespace {

/// A disc about the pivot: what a blade at rest on a flat face amounts to, at whatever angle.
Mounted disc(const Neighbour& neighbour) {
    const Mounted& tang = neighbour.tang;
    constexpr double below = 1.0;  // far enough round that only its upper side counts
    Mounted round = tang;
    round.outline = {
        {{0.0, 0.0, neighbour.seat_mm, std::numbers::pi - below, 2.0 * std::numbers::pi + below}},
        std::nullopt};
    return round;
}

std::vector<Contact> summed(const std::vector<double>& angles_deg,
                            const SpringEnd& own,
                            const std::optional<SpringEnd>& far) {
    std::vector<Contact> blades(angles_deg.size());
    const auto add = [&](const SpringEnd& end) {
        for (const Borne& b : end.borne()) {
            add_touch(blades[static_cast<std::size_t>(b.touch.part.blade)], *b.indenter, b.touch);
        }
    };
    add(own);
    if (far) add(*far);
    // What each end stores by itself, and the work on the roots' added turns and lifts.
    const auto by_root = [](const SpringEnd& end) {
        return 0.5 * (end.moment_nmm() * end.turn_rad() + end.force_n() * end.lift_mm());
    };
    double energy = by_root(own);
    if (far) energy += by_root(*far);
    for (const Contact& blade : blades) energy += blade.energy_nmm;
    for (std::size_t i = 0; i < blades.size(); ++i) {
        blades[i].blade_angle_deg = angles_deg[i];
        blades[i].energy_nmm = energy;
    }
    Others& others = blades[0].others;
    others.root_turn_rad = own.turn_rad();
    others.root_lift_mm = own.lift_mm();
    if (far) {
        others.far_root_turn_rad = far->turn_rad();
        others.far_root_lift_mm = far->lift_mm();
    }
    return blades;
}

/// Whether a blade is taken along, flat on flat, as the own one is turned.
bool taken_along(const Joint& joint, const std::vector<Contact>& blades, std::size_t blade) {
    if (blade > joint.beside.size() || joint.beside[blade - 1].standing.reach_deg == 0.0)
        return false;
    return joint.beside[blade - 1].tang.pivot_mm == joint.pivot_mm && blades[0].count == 1 &&
           blades[blade].count == 1 && in_one_line(blades[0].touches[0], blades[blade].touches[0]);
}

/// The own blade's contact with what the others do in it.
Contact with_others(const Joint& joint, const std::vector<Contact>& blades) {
    Contact own = blades[0];
    for (std::size_t i = 1; i < blades.size(); ++i) {
        const bool here = i <= joint.beside.size();
        for (const Touch& touch : blades[i].all()) {
            if (here) {
                own.others.beside.push_back(touch);
                continue;
            }
            own.others.far.push_back(seen_from_own(joint, touch));
        }
        own.others.angles_deg.push_back(blades[i].blade_angle_deg);
        if (!taken_along(joint, blades, i)) continue;
        own.torque_nmm += blades[i].torque_nmm;
        own.others.taken_along = static_cast<int>(i);
    }
    return own;
}

}  // namespace

detail::Blades::Blades(const Joint& joint, const Pushed* pushed) : joint_(joint), pushed_(pushed) {
    for (const Neighbour& neighbour : joint.beside) neighbours_.push_back(&neighbour);
    if (joint.far_end) {
        for (const Neighbour& neighbour : joint.far_end->blades) neighbours_.push_back(&neighbour);
    }
    off_.resize(neighbours_.size());
}

std::vector<Contact> detail::Blades::at(const std::vector<double>& angles_deg) {
    return solve(angles_deg, outlines());
}

std::vector<Contact> detail::Blades::on_faces(std::vector<double>& angles_deg,
                                              const std::vector<bool>& faces) {
    std::vector<Mounted> discs;
    discs.reserve(neighbours_.size());
    Outlines tangs = outlines();
    std::vector<double> as_discs = angles_deg;
    for (std::size_t i = 1; i < count(); ++i) {
        if (!faces[i]) continue;
        discs.push_back(disc(neighbour(i)));
        tangs[i - 1] = &discs.back();
        as_discs[i] = 0.0;
    }
    std::vector<Contact> rough = solve(as_discs, tangs);
    for (std::size_t i = 1; i < count(); ++i) {
        if (!faces[i]) continue;
        const double slope = rough[i].count > 0 ? rough[i].touches[0].slope : face_slope(rough, i);
        angles_deg[i] = neighbour(i).standing.blade_angle_deg + degrees(std::atan(slope));
    }
    return rough;
}

detail::Blades::Outlines detail::Blades::outlines() const {
    Outlines tangs;
    for (const Neighbour* neighbour : neighbours_) tangs.push_back(&neighbour->tang);
    return tangs;
}

std::vector<Contact> detail::Blades::solve(const std::vector<double>& angles_deg,
                                           const Outlines& tangs) {
    SpringEnd own(joint_.flexibility, pushed_);
    std::optional<SpringEnd> far;
    own.add(joint_, 0, angles_deg[0]);
    if (joint_.far_end) far.emplace(joint_.far_end->flexibility);
    for (std::size_t i = 0; i < tangs.size(); ++i) {
        if (off_[i]) continue;
        SpringEnd& end = i < joint_.beside.size() ? own : *far;
        end.add(*tangs[i], static_cast<int>(i) + 1, angles_deg[i + 1]);
    }
    own.bore(last_.own);
    if (far) far->bore(last_.far);
    settle(own, far ? &*far : nullptr, joint_.far_end ? &*joint_.far_end : nullptr, last_);
    last_.own = own.touches();
    if (far) last_.far = far->touches();
    return summed(angles_deg, own, far);
}

/// Slope of the bent face at the pivot of a blade.
double detail::Blades::face_slope(const std::vector<Contact>& blades, std::size_t blade) const {
    const std::size_t here = joint_.beside.size() + 1;
    const bool near = blade < here;
    const Flexibility& flexibility = near ? joint_.flexibility : joint_.far_end->flexibility;
    const Mounted& tang = neighbour(blade).tang;
    const Others& others = blades[0].others;
    double slope = tang.face_slope + (near ? others.root_turn_rad : others.far_root_turn_rad);
    if (near && pushed_) slope += pushed_->at(tang.pivot_mm).rad_per_n;
    for (std::size_t i = near ? 0 : here; i < (near ? here : blades.size()); ++i) {
        for (const Touch& touch : blades[i].all()) {
            slope += touch.force_n * slope_per_force(flexibility, tang.pivot_mm, touch.x_mm);
        }
    }
    return slope;
}

Contact detail::contact_with_others(const Joint& joint,
                                    double blade_angle_deg,
                                    const Pushed* pushed) {
    return with_others(joint, seated(Blades(joint, pushed), blade_angle_deg));
}

std::vector<Contact> blades_of(const Joint& joint, const Contact& contact) {
    if (joint.alone()) return {contact};
    std::vector<double> angles{contact.blade_angle_deg};
    angles.insert(angles.end(), contact.others.angles_deg.begin(), contact.others.angles_deg.end());
    const StopForce& stop = contact.stop;
    if (stop.force_n == 0.0) return Blades(joint).at(angles);
    const Pushed pushed{joint.flexibility, *joint.stop, stop.force_n};
    return Blades(joint, &pushed).at(angles);
}

}  // namespace backspring
