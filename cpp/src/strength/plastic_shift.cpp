#include <algorithm>
#include <limits>

#include "backspring/strength/plastic_spring.hpp"
#include "hinge.hpp"
#include "yielded_spans.hpp"

namespace backspring {
namespace {

constexpr double kAll = std::numeric_limits<double>::infinity();

/// What the lasting turn of a span does to the face ahead of it.
struct SpanShift {
    const SpanTurn& turn;
    double rear_pin_mm;  ///< of a span between the pins, else 0

    void add_to(FaceShift& shift) const {
        if (rear_pin_mm > 0.0) {
            shift.slope += turn.turn_rad * share() + turn.first_mm / rear_pin_mm;
            return;
        }
        shift.slope += turn.turn_rad;
        shift.height_mm -= turn.middle_mm * turn.turn_rad + turn.first_mm;
    }

    /// How fast that grows with a load at a station.
    void add_rate(FaceShift& per_n, double load_mm) const {
        const auto& [none, one, two] = turn.rates;
        if (rear_pin_mm > 0.0) {
            const double by = 1.0 / rear_pin_mm;
            per_n.slope += load_mm * ((share() * none + 2.0 * by * one) * share() + by * by * two);
            return;
        }
        const double middle = turn.middle_mm, arm = load_mm - middle;
        per_n.slope += arm * none - one;
        per_n.height_mm -= (arm * none - one) * middle + arm * one - two;
    }

    [[nodiscard]] double share() const { return 1.0 + turn.middle_mm / rear_pin_mm; }
};

}  // namespace

void PlasticSpring::add_tapers(const Greatest& most,
                               std::span<const Load> loads,
                               double upto_mm,
                               FaceShift& shift,
                               std::span<FaceShift> per_n) const {
    for (const PlasticTaper& taper : watched_) {
        const double rear_pin = taper.from_mm < 0.0 ? rear_pin_mm_ : 0.0;
        const auto add = [&](const MomentPart& part, const SpanTurn& turn) {
            const SpanShift moved{turn, rear_pin};
            moved.add_to(shift);
            for (std::size_t i = 0; i < per_n.size(); ++i) {
                if (loads[i].x_mm >= part.nearest_mm) moved.add_rate(per_n[i], loads[i].x_mm);
            }
        };
        const Span within{taper.from_mm, std::min(taper.to_mm, upto_mm)};
        each_yielded(most.along(taper), taper, within,
                     [&](const MomentPart& part, const Span& yields) {
                         each_turn(part, taper, yields, add);
                     });
    }
}

FaceShift PlasticSpring::shift_after(std::span<const Load> loads,
                                     std::span<FaceShift> per_n) const {
    if (loads.empty()) return shift_;
    std::ranges::fill(per_n, FaceShift{});
    FaceShift shift = shift_of_nodes_;
    for (const Node& node : watched()) {
        const double moment = moment_nmm(loads, node);
        if (moment <= node.elastic_nmm) continue;
        const Residual residual = residual_of(node.section, moment);
        add_turn(shift, node, node.length_mm * (residual.per_mm - node.residual_per_mm));
        for (std::size_t i = 0; i < per_n.size(); ++i) {
            const double turn = node.length_mm * residual.per_nmm2;
            add_turn(per_n[i], node, turn * unit_moment_mm(node, loads[i].x_mm));
        }
    }
    if (!watched_.empty()) {
        add_tapers(greatest_with(moments_of(loads)), loads, kAll, shift, per_n);
    }
    return shift;
}

void PlasticSpring::bend(std::span<const Load> loads) {
    bear(loads);
    let_go();
}

void PlasticSpring::bend_by_each(std::span<const Load> forces) {
    for (const Load& force : forces) bear({&force, 1});
    let_go();
}

/// Keeps the greatest moments.
void PlasticSpring::bear(std::span<const Load> loads) {
    for (Node& node : nodes_) node.bent_nmm = std::max(node.bent_nmm, moment_nmm(loads, node));
    borne_ = greatest_with(moments_of(loads));
    for (MomentPart& part : borne_.ahead) part.nearest_mm = kAll;
    borne_.behind.nearest_mm = kAll;
}

/// What stays of all that it has borne.
void PlasticSpring::let_go() {
    shift_of_nodes_ = {};
    for (Node& node : nodes_) {
        if (node.bent_nmm > node.borne_nmm) {
            node.residual_per_mm = residual_after(node, node.bent_nmm);
            node.borne_nmm = node.bent_nmm;
            node.elastic_nmm = std::max(node.elastic_nmm, node.borne_nmm);
        }
        add_turn(shift_of_nodes_, node, node.length_mm * node.residual_per_mm);
    }
    shift_ = shift_of_nodes_;
    add_tapers(borne_, {}, kAll, shift_, {});
    find_foremost();
}

}  // namespace backspring
