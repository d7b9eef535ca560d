#include "backspring/action/rap.hpp"

#include <algorithm>

#include "backspring/core/angle.hpp"
#include "backspring/core/require.hpp"
#include "place_curve.hpp"

namespace backspring {
namespace {

constexpr double kLastDeg = -45.0;
constexpr double kFirstDeg = 1.0;

/// So far that the spring alone takes an energy up; friction only helps. Both ends of the way.
std::vector<Contact> ends_of_way(const Joint& joint, const Contact& closed, double energy_mj) {
    const double rest = closed.blade_angle_deg;
    PlaceCurve way(joint);
    way.add(closed);
    for (double depth = kFirstDeg;;) {
        const double angle = std::max(rest - depth, kLastDeg);
        Contact last = way.contact_at(angle);
        const double stored = last.energy_nmm - closed.energy_nmm;
        if (stored >= energy_mj || angle <= kLastDeg) return {std::move(last), closed};
        depth *= stored > 0.0 ? std::clamp(1.2 * energy_mj / stored, 1.3, 16.0) : 4.0;
    }
}

/// The way past a closed rest, as far as a spring alone takes up an energy.
class PastRest {
  public:
    /// @param closed  outlives this
    PastRest(const Action& action, const Contact& closed, double most_mj)
        : closed_(closed),
          way_(action, ends_of_way(action.joint, closed, most_mj)),
          friction_(way_.pieces(), [](const Turn& turn) { return turn.friction_nmm; }) {}

    /// The overtravel that takes up an energy; nothing where the way is too short for it.
    [[nodiscard]] std::optional<Overtravel> taking_up(double energy_mj) const {
        const auto more = [&](const Turn& turn) {
            return stored_mj(turn) + work_mj(turn) - energy_mj;
        };
        const auto pieces = way_.pieces();
        for (std::size_t p = pieces.size(); p-- > 0;) {
            const Piece& piece = pieces[p];
            for (std::size_t i = piece.size(); i-- > 0;) {
                if (more(*piece[i]) < 0.0) continue;
                const bool first = i + 1 == piece.size();
                return at(first ? *piece[i] : zero_between(way_.action(), piece, i, more),
                          energy_mj);
            }
        }
        return std::nullopt;
    }

  private:
    [[nodiscard]] double stored_mj(const Turn& turn) const {
        return turn.contact.energy_nmm - closed_.energy_nmm;
    }
    [[nodiscard]] double work_mj(const Turn& turn) const {
        return friction_.between(angle_of(&turn), closed_.blade_angle_deg);
    }

    /// At a turn so near that its torque tells the little way that is left.
    [[nodiscard]] Overtravel at(const Turn& turn, double energy_mj) const {
        const double stored = stored_mj(turn), work = work_mj(turn);
        const double torque = -turn.contact.torque_nmm;
        const double left = (energy_mj - stored - work) / (torque + turn.friction_nmm);
        return {.angle_deg = closed_.blade_angle_deg - angle_of(&turn) + degrees(left),
                .stored_mj = stored + torque * left,
                .friction_work_mj = work + turn.friction_nmm * left};
    }

    const Contact& closed_;
    Turns way_;
    TurnIntegral friction_;
};

}  // namespace

std::vector<std::optional<Overtravel>> overtravels(const Action& action,
                                                   const Contact& closed,
                                                   std::span<const double> energies_mj) {
    Requirements rules;
    double most = 0.0;
    for (const double energy : energies_mj) {
        rules.in_range("energy_mj", energy, 0.0, 1e9, "mJ");
        most = std::max(most, energy);
    }
    rules.throw_if_any();
    std::optional<PastRest> past;
    if (most > 0.0) past.emplace(action, closed, most);
    std::vector<std::optional<Overtravel>> found;
    for (const double energy : energies_mj) {
        found.push_back(energy == 0.0 ? Overtravel{} : past->taking_up(energy));
    }
    return found;
}

std::optional<Overtravel> overtravel(const Action& action,
                                     const Contact& closed,
                                     double energy_mj) {
    return overtravels(action, closed, {&energy_mj, 1}).front();
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
