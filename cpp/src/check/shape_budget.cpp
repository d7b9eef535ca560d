#include <algorithm>
#include <cmath>
#include <vector>

#include "backspring/action/friction_couple.hpp"
#include "backspring/check/error_budget.hpp"
#include "backspring/check/frame_effect.hpp"

namespace backspring {
namespace {

constexpr int kArchPoints = 24;
constexpr double kMostBow = 0.02;  // of the way it arches over
constexpr double kMostPreloadMm = 10.0;

void widen(std::optional<double>& low, std::optional<double>& high, double value) {
    low = std::min(low.value_or(value), value);
    high = std::max(high.value_or(value), value);
}

void widen_readings(BudgetRow& row, const FrameEffect& effect) {
    for (const auto& reading : {effect.half_stop_mm, effect.closed_mm}) {
        if (reading) widen(row.reading_low_mm, row.reading_high_mm, *reading);
    }
}

void widen_pull(BudgetRow& row, double share) {
    widen(row.pull_low_share, row.pull_high_share, share);
}

BudgetRow row_of(const UsualEffect& usual) {
    BudgetRow row{.effect = "liners", .settled_by = "frame"};
    if (usual.what == HeldBy::pin_clearance) {
        row = {.effect = "pin-clearance", .settled_by = "gauge-pins"};
    }
    if (usual.what == HeldBy::pivot_clearance) {
        row = {.effect = "pivot-clearance", .settled_by = "gauge-pivot"};
    }
    // Of no clearance: nothing, which a row of liners does not reach down to.
    const bool none = usual.what != HeldBy::liners;
    for (const FrameEffect& effect : {usual.least, usual.most}) widen_pull(row, effect.pull_share);
    if (!none) widen_readings(row, usual.least);
    widen_readings(row, usual.most);
    if (none && row.reading_low_mm) widen(row.reading_low_mm, row.reading_high_mm, 0.0);
    return row;
}

/// The contact's torque where the force leans with the pad's face: its part along the pad drags.
double leaning_nmm(const Spring& spring, Solution& solution, const Contact& contact) {
    double lean = 0.0;
    for (const Touch& touch : contact.all()) {
        if (std::abs(touch.slope) > std::abs(lean)) lean = touch.slope;
    }
    const Friction along{.spring = std::abs(lean)};
    return sliding_contact(spring, solution.joint(), contact, along, lean > 0.0).torque_nmm;
}

double rear_mm(const Spring& spring) {
    return spring.support.kind == SupportKind::two_pins ? -spring.support.rear_pin_mm : 0.0;
}

double usual_bow_mm(const Design& design) {
    return std::min(kUsualBowMm, kMostBow * (design.own().pad.start_mm - rear_mm(design.spring)));
}

/// The same profile with more stations; a spring that is even all along has one alone.
Profile refined(const Profile& profile, double from_mm, double to_mm, double end_mm) {
    Profile stations = profile;
    const auto add = [&](double x) {
        const bool there = std::ranges::count(profile, x, &Station::x_mm) > 0;
        if (!there) stations.push_back({x, thickness_mm(profile, x)});
    };
    for (int i = 0; i <= kArchPoints; ++i) add(from_mm + (to_mm - from_mm) * i / kArchPoints);
    add(end_mm);
    std::ranges::stable_sort(stations, {}, &Station::x_mm);
    return stations;
}

}  // namespace

Spring bowed(Spring spring, const Pad& pad, double height_mm) {
    const double rear = rear_mm(spring), span = pad.start_mm - rear;
    spring.thickness = refined(spring.thickness, rear, pad.start_mm, pad.end_mm);
    spring.mid_line.clear();
    for (Station& station : spring.thickness) {
        const double part = std::clamp((station.x_mm - rear) / span, 0.0, 1.0);
        const double arch = 4.0 * height_mm * part * (1.0 - part);
        const bool leans = part > 0.0 && part < 1.0;
        const double lean = leans ? 4.0 * height_mm * (1.0 - 2.0 * part) / span : 0.0;
        spring.mid_line.push_back({station.x_mm, arch});
        station.thickness_mm *= std::hypot(1.0, lean);
    }
    return spring;
}

std::vector<BudgetRow> held_budget(Solution& solution, const BudgetStated& stated) {
    std::vector<BudgetRow> rows;
    for (const UsualEffect& usual : usual_effects(solution)) {
        if (usual.what == HeldBy::pin_clearance && stated.pin_clearance) continue;
        if (usual.what == HeldBy::pivot_clearance && stated.pivot_clearance) continue;
        rows.push_back(row_of(usual));
    }
    return rows;
}

std::optional<BudgetRow> bow_budget(Solution& solution) {
    const Design& design = solution.design();
    const auto hardest = hardest_turn(solution);
    if (!design.spring.mid_line.empty() || !hardest) return std::nullopt;
    const auto shaped = [&](double height_mm) {
        Design changed = design;
        changed.spring = bowed(design.spring, design.own().pad, height_mm);
        Stop& stop = changed.own().fit.stop;
        if (stop.place == StopPlace::unstated) stop.place = StopPlace::middle;
        return changed;
    };
    const Design straight = shaped(0.0);
    Solution before(straight);
    const double level = leaning_nmm(straight.spring, solution, hardest->contact);
    BudgetRow row{.effect = "bow", .settled_by = "height-gauge"};
    const double most = usual_bow_mm(design);
    for (const double height : {-most, most}) {
        const Design arched = shaped(height);
        const FrameEffect effect = frame_effect(before, arched);
        const double leaning = leaning_nmm(arched.spring, solution, hardest->contact) / level;
        widen_pull(row, effect.pull_share + leaning - 1.0);
        widen_readings(row, effect);
    }
    return row;
}

std::optional<BudgetRow> modulus_budget(Solution& solution,
                                        const std::optional<Ends>& modulus_mpa) {
    if (!modulus_mpa) return std::nullopt;
    BudgetRow row{.effect = "modulus", .settled_by = "weight"};
    for (const double modulus : {modulus_mpa->low, modulus_mpa->high}) {
        Design changed = solution.design();
        changed.spring.elastic.youngs_modulus_mpa = modulus;
        widen_pull(row, frame_effect(solution, changed).pull_share);
    }
    return row;
}

BudgetRow preload_budget(Solution& solution) {
    BudgetRow row{.effect = "preload", .settled_by = "rear-pin-out"};
    for (const double by : {-kUsualPreloadMm, kUsualPreloadMm}) {
        Design changed = solution.design();
        double& preload = changed.own().fit.preload_mm;
        preload = std::clamp(preload + by, 0.0, kMostPreloadMm);
        const FrameEffect effect = frame_effect(solution, changed);
        widen_pull(row, effect.pull_share);
        widen_readings(row, effect);
    }
    return row;
}

/// The greatest torque against opening, looked for from other angles.
double found_again_nmm(Solution& solution) {
    constexpr double part = 0.377;
    const auto turns = solution.travel().all();
    const double from = angle_of(turns.front()), to = angle_of(turns.back());
    const Turns again(solution.action(), {from, std::lerp(from, to, part), to});
    const auto opening = [](const Turn& turn) { return turn.opening_nmm(); };
    return opening(largest(again, opening));
}

BudgetRow solver_budget(Solution& solution) {
    BudgetRow row{.effect = "solver", .settled_by = "nothing"};
    constexpr double little_deg = 0.01;
    if (const auto hardest = hardest_turn(solution)) {
        const double off = std::abs(found_again_nmm(solution) / hardest->opening_nmm() - 1.0);
        row.pull_low_share = -off, row.pull_high_share = off;
    }
    const Joint& joint = solution.joint();
    for (const auto& rest : {solution.rests().half_stop, solution.rests().closed}) {
        if (!rest || rest->count == 0) continue;
        const Contact beside = contact_at(joint, rest->blade_angle_deg + little_deg);
        const double rises = beside.torque_nmm - rest->torque_nmm;
        if (rises == 0.0) continue;
        const double moves = deflection_mm(joint, beside, joint.dial_mm) -
                             deflection_mm(joint, *rest, joint.dial_mm);
        const double off = std::abs(rest->torque_nmm / rises * moves);
        widen(row.reading_low_mm, row.reading_high_mm, -off);
        widen(row.reading_low_mm, row.reading_high_mm, off);
    }
    return row;
}

}  // namespace backspring
