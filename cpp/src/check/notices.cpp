#include "notices.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backspring/action/end_stop.hpp"
#include "backspring/action/rest.hpp"
#include "backspring/tang/drawn_outline.hpp"

namespace backspring {
namespace {

class Notices {
  public:
    void add_if(bool holds, Notice notice) {
        if (holds) list_.push_back(std::move(notice));
    }
    [[nodiscard]] std::vector<Notice> list() && { return std::move(list_); }

  private:
    std::vector<Notice> list_;
};

void position_notices(Notices& notices, const Design& design, const Check& check) {
    const Position* open = check.position("open");
    notices.add_if(open->force_n > 0.0 && open->torque_nmm > 0.0,
                   {.code = NoticeCode::not_held_open});
    notices.add_if(!check.position("closed"), {.code = NoticeCode::not_held_closed});
    notices.add_if(design.own().tang.half_stop_mm && !check.position("half_stop"),
                   {.code = NoticeCode::no_half_stop_rest});
    for (const Position& position : check.positions) {
        notices.add_if(position.force_n == 0.0,
                       {.code = NoticeCode::lifted_off, .names = {{"position", position.name}}});
    }
}

/// A drawn outline's sides besides the faces, where the blade stays on its own.
void further_rest_notices(Notices& notices, const Design& design, const Joint& joint) {
    constexpr double reach_deg = 5.0;
    const Tang& tang = design.own().tang;
    if (tang.outline.empty() || !joint.alone()) return;
    for (const RestingSide& side : sides_of(make_outline(tang, 0.0).body)) {
        const bool behind = side.normal_rad > 0.5 * std::numbers::pi + 1e-6 &&
                            side.normal_rad < joint.outline.closed_rad - 1e-6;
        const bool half_stop =
            tang.half_stop_mm && std::abs(side.normal_rad - joint.outline.end_rad) < 1e-6;
        if (!behind || half_stop) continue;
        const auto rest = rest_near(joint, side.blade_angle_deg, reach_deg);
        notices.add_if(
            rest && rest->count > 0,
            {.code = NoticeCode::further_rest,
             .parameters = {{"angle", rest ? rest->blade_angle_deg : 0.0, Quantity::angle},
                            {"distance", side.distance_mm, Quantity::length}}});
    }
}

/// What the other blades do while this one rests somewhere.
void other_notices(Notices& notices, const Joint& joint, const Check& check) {
    bool all_rest = true;
    for (const Position& position : check.positions) {
        if (joint.alone() || std::isnan(position.blade_angle_deg)) continue;
        all_rest &= contact_at(joint, position.blade_angle_deg).others.all_rest;
    }
    notices.add_if(!all_rest, {.code = NoticeCode::other_no_rest});
}

void kick_notice(Notices& notices, const Design& design) {
    if (!design.own().tang.kick) return;
    const double nose = design.own().tang.pivot_mm - design.own().tang.kick->distance_mm;
    const Pad& pad = design.own().pad;
    notices.add_if(
        nose < pad.start_mm || nose > pad.end_mm,
        {.code = NoticeCode::kick_off_pad, .parameters = {{"nose", nose, Quantity::length}}});
}

void travel_notices(Notices& notices, const Check& check) {
    const Travel& travel = check.travel;
    if (!travel.yield_margin) return;
    notices.add_if(*travel.yield_margin < 1.0, {.code = NoticeCode::yields});
    notices.add_if(*travel.yield_margin >= 1.0 && *travel.yield_margin_low < 1.0,
                   {.code = NoticeCode::may_yield});
}

/// The contact of a position, without the stop's force.
Contact contact_in(const Position& position, const Joint& joint, const Rests& rests) {
    if (position.name == "closed") return *rests.closed;
    if (position.name == "half_stop") return *rests.half_stop;
    return without_stop(joint, rests.open);
}

void slope_notice(Notices& notices, const Joint& joint, const Rests& rests, const Check& check) {
    double steepest = std::abs(joint.face_slope);
    for (const Position& position : check.positions) {
        if (std::isnan(position.blade_angle_deg)) continue;
        const Contact contact = contact_in(position, joint, rests);
        for (const Touch& touch : contact.all()) {
            steepest = std::max(steepest, std::abs(touch.slope));
        }
    }
    notices.add_if(steepest > kSmallSlope,
                   {.code = NoticeCode::steep,
                    .parameters = {{"slope", steepest, Quantity::ratio},
                                   {"small", kSmallSlope, Quantity::ratio}}});
}

/// Loaded readings that the stop at open can change by more than they may be off.
void stop_notice(Notices& notices, const Design& design, const Check& check) {
    const auto& target = design.targets.reading_mm;
    if (!target || !check.stop_band) return;
    const Ends& band = check.stop_band->reading_mm;
    const bool stated = check.stop_band->place != StopPlace::unstated;
    notices.add_if(band.high - band.low > *target,
                   {.code = NoticeCode::stop_unknown,
                    .parameters = {{"low", band.low, Quantity::length},
                                   {"high", band.high, Quantity::length},
                                   {"target", *target, Quantity::length}},
                    .names = {{"missing", stated ? "face" : "place"}}});
}

/// What keeps a target from being judged.
const char* missing_for(const std::string& target, const Design& design, const Check& check) {
    if (!check.impossible.empty()) return "possible";
    if (check.travel.peak_stress_mpa <= 0.0) return "load";
    if (target == "openings" && design.strength.tensile_mpa.value <= 0.0) return "tensile";
    if (target == "edge_gap" && !check.strokes.empty()) return "edge";
    if (target == "pull" && !check.strokes.empty()) return "nail-nick";
    return "rest";
}

void target_notices(Notices& notices, const Design& design, const Check& check) {
    for (const TargetResult& target : check.targets) {
        notices.add_if(target.stated && !target.value,
                       {.code = NoticeCode::target_unknown,
                        .names = {{"target", target.name},
                                  {"missing", missing_for(target.name, design, check)}}});
    }
}

void bounds_notice(Notices& notices, const Check& check) {
    std::string results;
    for (const std::string& name : check.impossible)
        results += (results.empty() ? "" : ", ") + name;
    notices.add_if(!results.empty(),
                   {.code = NoticeCode::out_of_bounds, .names = {{"results", results}}});
}

}  // namespace

std::vector<Notice> detail::find_notices(const Design& design,
                                         const Joint& joint,
                                         const Rests& rests,
                                         const Check& check) {
    Notices notices;
    position_notices(notices, design, check);
    further_rest_notices(notices, design, joint);
    kick_notice(notices, design);
    other_notices(notices, joint, check);
    travel_notices(notices, check);
    slope_notice(notices, joint, rests, check);
    stop_notice(notices, design, check);
    target_notices(notices, design, check);
    bounds_notice(notices, check);
    return std::move(notices).list();
}

}  // namespace backspring
