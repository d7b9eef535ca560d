#include "backspring/action/rap.hpp"

#include <algorithm>

#include "backspring/core/angle.hpp"
#include "backspring/core/require.hpp"

namespace backspring {
namespace {

constexpr double kLastDeg = -45.0;
constexpr double kFirstDeg = 1.0;

/// The overtravel that takes up an energy within turns that end at the rest; nothing where more
/// turns are needed.
std::optional<Overtravel> taken_within(const Turns& past, const Contact& closed, double energy_mj) {
    const double rest = closed.blade_angle_deg;
    const auto by_friction = [](const Turn& turn) { return turn.friction_nmm; };
    double work = 0.0, worked_to = rest;
    const auto taken = [&](std::span<const Piece> piece, const Turn& turn) {
        const double angle = angle_of(&turn);
        return Overtravel{
            .angle_deg = rest - angle,
            .stored_mj = turn.contact.energy_nmm - closed.energy_nmm,
            .friction_work_mj = work + integral(piece, angle, worked_to, by_friction)};
    };
    for (std::size_t p = past.pieces().size(); p-- > 0;) {
        const auto piece = past.pieces().subspan(p, 1);
        const auto more = [&](const Turn& turn) {
            const Overtravel found = taken(piece, turn);
            return found.stored_mj + found.friction_work_mj - energy_mj;
        };
        for (std::size_t i = piece[0].size(); i-- > 0;) {
            const Turn& turn = *piece[0][i];
            if (more(turn) >= 0.0) {
                if (i + 1 == piece[0].size()) return taken(piece, turn);
                const double angle = zero_between(past.action(), piece[0], i, more);
                return taken(piece, turn_at(past.action(), angle));
            }
            work = taken(piece, turn).friction_work_mj;
            worked_to = angle_of(&turn);
        }
    }
    return std::nullopt;
}

}  // namespace

std::optional<Overtravel> overtravel(const Action& action,
                                     const Contact& closed,
                                     double energy_mj) {
    Requirements rules;
    rules.in_range("energy_mj", energy_mj, 0.0, 1e9, "mJ");
    rules.throw_if_any();
    if (energy_mj == 0.0) return Overtravel{};
    const double rest = closed.blade_angle_deg;
    // So far that the spring alone takes it up; friction only helps.
    double last = rest - kFirstDeg;
    for (double depth = kFirstDeg; last > kLastDeg; last = std::max(rest - depth, kLastDeg)) {
        const double stored = contact_at(action.joint, last).energy_nmm - closed.energy_nmm;
        if (stored >= energy_mj) break;
        depth *= stored > 0.0 ? std::clamp(1.2 * energy_mj / stored, 1.3, 16.0) : 4.0;
    }
    return taken_within(Turns(action, {last, rest}), closed, energy_mj);
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
