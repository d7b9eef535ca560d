#include "notices.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {


class Notices {
  public:
    void add_if(bool holds, const char* code, std::string message) {
        if (holds) list_.push_back({code, std::move(message)});
    }
    [[nodiscard]] std::vector<Notice> list() && { return std::move(list_); }

  private:
    std::vector<Notice> list_;
};

void position_notices(Notices& notices, const Design& design, const Check& check) {
    const Position* open = check.position("open");
    notices.add_if(open->force_n > 0.0 && open->torque_nmm > 0.0, "not-held-open",
                   "open: the spring bears ahead of the pivot and would close the blade; move the "
                   "rear corner back or lengthen the open face to the rear");
    notices.add_if(!check.position("closed"), "not-held-closed",
                   "closed: the blade finds no rest near 0 deg; the spring would throw it open");
    notices.add_if(design.tang.half_stop_mm && !check.position("half_stop"), "no-half-stop-rest",
                   "half-stop: the blade finds no rest near 90 deg; its face does not hold it");
    for (const Position& position : check.positions) {
        notices.add_if(position.force_n == 0.0, "lifted-off",
                       position.name + ": the tang does not touch the spring; the blade is loose");
    }
}

void kick_notice(Notices& notices, const Design& design) {
    if (!design.tang.kick) return;
    const double nose = design.tang.pivot_mm - design.tang.kick->distance_mm;
    const Pad& pad = design.spring.pad;
    notices.add_if(nose < pad.start_mm || nose > pad.end_mm, "kick-off-pad",
                   "kick: its nose stands at station " + with_unit(nose, "mm") +
                       ", off the pad, and does not meet the spring");
}

void travel_notices(Notices& notices, const Check& check) {
    const Travel& travel = check.travel;
    if (!travel.yield_margin) return;
    notices.add_if(*travel.yield_margin < 1.0, "yields",
                   "the outer fibre yields on the way: expect the spring to take a set");
    notices.add_if(*travel.yield_margin >= 1.0 && *travel.yield_margin_low < 1.0, "may-yield",
                   "at the low end of what this steel may carry the outer fibre yields");
}

void slope_notice(Notices& notices, const Joint& joint, const Check& check) {
    double steepest = std::abs(joint.face_slope);
    for (const Position& position : check.positions) {
        const Contact contact = contact_at(joint, position.blade_angle_deg);
        for (const Touch& touch : contact.all()) {
            steepest = std::max(steepest, std::abs(touch.slope));
        }
    }
    notices.add_if(steepest > kSmallSlope, "steep",
                   "the spring or the tang's face slopes more than 0.1 where they meet: the "
                   "small-slope model loses accuracy (error of order slope squared)");
}

/// Why a design does not tell what a target asks for.
std::string why_unknown(const std::string& target, const Design& design, const Check& check) {
    if (check.travel.peak_stress_mpa <= 0.0) return "the spring bears nothing on the way";
    if (target == "openings" && design.strength.tensile_mpa.value <= 0.0) {
        return "a life needs the steel's tensile strength: give spring.tensile or a hardness";
    }
    if (target == "pull" && !check.strokes.empty()) {
        return "a pull needs the place it acts at: give blade.nail_nick";
    }
    return "the blade does not stay closed and open";
}

void target_notices(Notices& notices, const Design& design, const Check& check) {
    for (const TargetResult& target : check.targets) {
        notices.add_if(!target.value, "target-unknown",
                       "targets." + target.name + ": cannot be judged and counts as missed; " +
                           why_unknown(target.name, design, check));
    }
}

}  // namespace

std::vector<Notice> find_notices(const Design& design, const Joint& joint, const Check& check) {
    Notices notices;
    position_notices(notices, design, check);
    kick_notice(notices, design);
    travel_notices(notices, check);
    slope_notice(notices, joint, check);
    target_notices(notices, design, check);
    return std::move(notices).list();
}

}  // namespace backspring
