#include "backspring/action/rap.hpp"

#include <algorithm>

#include "backspring/core/angle.hpp"
#include "backspring/core/require.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr double kLastDeg = -45.0;
// Near the rest the contact wanders over the face within tenths of a degree.
constexpr double kFirstStrideDeg = 0.01;
constexpr double kStrideGrowth = 1.4;
constexpr double kLongestStrideDeg = 1.0;

/// Work of friction from one turn back to another, Simpson's rule.
double friction_work_mj(const Action& action, const Turn& from, const Turn& to) {
    const double high = from.contact.blade_angle_deg, low = to.contact.blade_angle_deg;
    const Turn middle = turn_at(action, 0.5 * (high + low));
    const double mean = (from.friction_nmm + 4.0 * middle.friction_nmm + to.friction_nmm) / 6.0;
    return mean * radians(high - low);
}

/// Where the spring takes over from the hand on the way from the crest down to the rest.
std::optional<Turn> takes_over(const Action& action,
                               std::span<const Step> steps,
                               const Stroke& stroke) {
    const auto closing = [&](double angle) { return turn_at(action, angle).closing_nmm(); };
    Turn last = turn_at(action, stroke.crest_angle_deg);
    if (last.closing_nmm() >= 0.0) return last;
    for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
        const double angle = step->turn.contact.blade_angle_deg;
        if (angle >= last.contact.blade_angle_deg) continue;
        if (angle <= stroke.from_deg) break;
        if (step->turn.closing_nmm() >= 0.0) {
            return turn_at(action, find_root(closing, angle, last.contact.blade_angle_deg,
                                             step->turn.closing_nmm(), last.closing_nmm()));
        }
        last = step->turn;
    }
    return std::nullopt;
}

}  // namespace

double closing_energy_mj(const Action& action, std::span<const Step> steps, const Stroke& stroke) {
    const auto start = takes_over(action, steps, stroke);
    if (!start) return 0.0;
    double work = 0.0;
    Turn last = *start;
    const auto pass = [&](const Turn& turn) {
        work += 0.5 * (last.friction_nmm + turn.friction_nmm) *
                radians(last.contact.blade_angle_deg - turn.contact.blade_angle_deg);
        last = turn;
    };
    for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
        const double angle = step->turn.contact.blade_angle_deg;
        if (angle < last.contact.blade_angle_deg && angle > stroke.from_deg) pass(step->turn);
    }
    pass(turn_at(action, stroke.from_deg));
    const double released = start->contact.energy_nmm - last.contact.energy_nmm;
    return std::max(released - work, 0.0);
}

std::optional<Overtravel> overtravel(const Action& action,
                                     const Contact& closed,
                                     double energy_mj) {
    Requirements rules;
    rules.in_range("energy_mj", energy_mj, 0.0, 1e9, "mJ");
    rules.throw_if_any();
    const double rest = closed.blade_angle_deg;
    Turn from = turn_at(action, rest);
    double work = 0.0;
    const auto taken_at = [&](const Turn& turn) {
        return Overtravel{.angle_deg = rest - turn.contact.blade_angle_deg,
                          .stored_mj = turn.contact.energy_nmm - closed.energy_nmm,
                          .friction_work_mj = work + friction_work_mj(action, from, turn)};
    };
    const auto left = [&](const Overtravel& past) {
        return past.stored_mj + past.friction_work_mj - energy_mj;
    };
    if (energy_mj == 0.0) return Overtravel{};
    double before = -energy_mj, stride = kFirstStrideDeg;
    while (from.contact.blade_angle_deg > kLastDeg) {
        const double start = from.contact.blade_angle_deg;
        const Turn to = turn_at(action, std::max(start - stride, kLastDeg));
        const Overtravel next = taken_at(to);
        const double after = left(next);
        if (after >= 0.0) {
            const auto at = [&](double angle) { return left(taken_at(turn_at(action, angle))); };
            const double stop = find_root(at, to.contact.blade_angle_deg, start, after, before);
            return taken_at(turn_at(action, stop));
        }
        from = to;
        work = next.friction_work_mj;
        before = after;
        stride = std::min(kStrideGrowth * stride, kLongestStrideDeg);
    }
    return std::nullopt;
}

Rap rap(const Action& action,
        const Contact& closed,
        double energy_mj,
        double edge_radius_mm,
        std::optional<double> edge_clearance_mm) {
    Requirements rules;
    rules.in_range("energy_mj", energy_mj, 0.0, 1e9, "mJ");
    rules.positive("edge_radius_mm", edge_radius_mm, 1e4, "mm");
    if (edge_clearance_mm) {
        rules.in_range("edge_clearance_mm", *edge_clearance_mm, 0.0, 1e4, "mm");
    }
    rules.throw_if_any();
    Rap found;
    found.energy_mj = energy_mj;
    found.past = overtravel(action, closed, energy_mj);
    if (!found.past) return found;
    const double dip = radians(found.past->angle_deg) * edge_radius_mm;
    found.edge_dip_mm = dip;
    if (edge_clearance_mm) found.clearance_left_mm = *edge_clearance_mm - dip;
    return found;
}

}  // namespace backspring
