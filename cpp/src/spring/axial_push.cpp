#include "backspring/spring/axial_push.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/spring/stretches.hpp"

namespace backspring {
namespace {

BendingIntegrals operator-(const BendingIntegrals& a, const BendingIntegrals& b) {
    return {a.a0 - b.a0, a.a1 - b.a1, a.a2 - b.a2, a.shear - b.shear};
}

/// Where a piece begins, and whether a stretch does there: the section may step.
struct Cut {
    double x_mm;
    bool may_step;
    const Stretch* stretch;
};

/// All of them and, last, where the force acts.
std::vector<Cut> cuts(const Flexibility& flexibility, double at_mm, int pieces) {
    std::vector<Cut> stations;
    stations.reserve(static_cast<std::size_t>(pieces) + flexibility.stretches.size() + 1);
    for (const Stretch& stretch : flexibility.stretches) {
        const double end = std::min(stretch.end_mm, at_mm);
        if (!(end > stretch.start_mm)) continue;
        const double length = end - stretch.start_mm;
        // A whole number that rounding makes a little more is that number in every unit.
        constexpr double rounding = 1e-9;
        const int count = static_cast<int>(std::ceil(length * pieces / at_mm - rounding));
        for (int i = 0; i < count; ++i) {
            stations.push_back({stretch.start_mm + length * i / count, i == 0, &stretch});
        }
    }
    stations.push_back({at_mm, true, nullptr});
    return stations;
}

/// What a piece adds up to a station within or at its end.
struct Gain {
    double turn, arm;  ///< int lever ds/(E I), int s lever ds/(E I)
};

Gain gained(const AxialPush::Piece& piece, const BendingIntegrals& upto) {
    const BendingIntegrals part = upto - piece.upto;
    const double at_pin = piece.lever_mm - piece.lever_slope * piece.x_mm;
    return {at_pin * part.a0 + piece.lever_slope * part.a1,
            at_pin * part.a1 + piece.lever_slope * part.a2};
}

/// int lever^2 ds/(E I) over a piece.
double gives_way(const AxialPush::Piece& piece, const BendingIntegrals& upto) {
    const BendingIntegrals part = upto - piece.upto;
    const double at_pin = piece.lever_mm - piece.lever_slope * piece.x_mm,
                 slope = piece.lever_slope;
    return at_pin * at_pin * part.a0 + 2.0 * at_pin * slope * part.a1 + slope * slope * part.a2;
}

const AxialPush::Piece& piece_at(const AxialPush& push, double x_mm) {
    const auto ahead =
        std::upper_bound(push.pieces.begin() + 1, push.pieces.end(), x_mm,
                         [](double x, const AxialPush::Piece& piece) { return x < piece.x_mm; });
    return *(ahead - 1);
}

/// By the place itself, or by where the push acts of one farther ahead.
Compliance compliance_at(const Flexibility& flexibility,
                         const AxialPush& push,
                         const BeamPlace& place,
                         double x_mm) {
    const AxialPush::Piece& piece = piece_at(push, place.x_mm);
    const Gain gain = gained(piece, place.upto);
    const double turn = piece.turn_rad_per_n + gain.turn +
                        push.root_lever_mm() * flexibility.root_rotation_rad_per_nmm;
    // The moment at the pin lifts it as a force turns it.
    const double lift = -push.root_lever_mm() * flexibility.stretches.front().upto.a1;
    return {.mm_per_n = x_mm * turn - (piece.arm_mm_per_n + gain.arm) + lift, .rad_per_n = turn};
}

}  // namespace

double AxialPush::lever_mm(double x_mm) const {
    if (x_mm > at_mm) return 0.0;
    const Piece& piece = piece_at(*this, x_mm);
    return piece.lever_mm + piece.lever_slope * (x_mm - piece.x_mm);
}

AxialPush make_axial_push(const Spring& spring,
                          const Flexibility& flexibility,
                          double at_mm,
                          FunctionRef lever_mm,
                          int pieces) {
    const auto lever = [&](const BeamPlace& place) { return lever_mm(place.x_mm); };
    return axial_push_by_places(spring, flexibility, at_mm, lever, pieces);
}

AxialPush axial_push_by_places(const Spring& spring,
                               const Flexibility& flexibility,
                               double at_mm,
                               BorrowedFunction<const BeamPlace&> lever_mm,
                               int pieces) {
    AxialPush push;
    push.at_mm = at_mm;
    const std::vector<Cut> stations = cuts(flexibility, at_mm, pieces);
    const double per_shear =
        kShearFactor * shear_modulus_mpa(spring.elastic) / spring.elastic.youngs_modulus_mpa;
    // A root that gives has integrals of its own at the pin.
    BeamPlace here{stations.front().x_mm, flexibility.stretches.front().upto, 0.0};
    double lever = lever_mm(here);
    Gain sum{0.0, 0.0};
    push.pieces.reserve(stations.size());
    for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
        const double end_mm = stations[i + 1].x_mm;
        const bool may_step = stations[i + 1].may_step;
        const double x = here.x_mm;
        const BeamPlace next = beam_place(flexibility, end_mm);
        BeamPlace before = next;
        if (may_step) before.x_mm = std::nextafter(end_mm, x);
        const double end_lever = lever_mm(before);
        const double slope = (end_lever - lever) / (end_mm - x);
        const Stretch& stretch = *stations[i].stretch;
        const Section section = unit_section(stretch, x);
        const double per_width = 1.0 / (spring.width_mm * width_share(stretch, x));
        push.pieces.push_back({x, lever, slope, here.upto, sum.turn, sum.arm,
                               per_width * outer_stress_per_moment(section),
                               per_width / section.area_mm2});
        const Gain gain = gained(push.pieces.back(), next.upto);
        sum = {sum.turn + gain.turn, sum.arm + gain.arm};
        push.own_mm_per_n += gives_way(push.pieces.back(), next.upto);
        here = next;
        lever = may_step && i + 2 < stations.size() ? lever_mm(next) : end_lever;
    }
    push.end = here;
    const double root = push.root_lever_mm();
    push.own_mm_per_n +=
        root * root * flexibility.root_rotation_rad_per_nmm + per_shear * here.upto.shear;
    return push;
}

AxialPush raised(AxialPush push, const Flexibility& flexibility, double by_mm) {
    const double root = push.root_lever_mm(), rotation = flexibility.root_rotation_rad_per_nmm;
    push.own_mm_per_n += rotation * ((root + by_mm) * (root + by_mm) - root * root);
    Gain sum{0.0, 0.0};
    for (std::size_t i = 0; i < push.pieces.size(); ++i) {
        AxialPush::Piece& piece = push.pieces[i];
        const BendingIntegrals upto =
            i + 1 < push.pieces.size() ? push.pieces[i + 1].upto : push.end.upto;
        push.own_mm_per_n -= gives_way(piece, upto);
        piece.lever_mm += by_mm;
        push.own_mm_per_n += gives_way(piece, upto);
        piece.turn_rad_per_n = sum.turn, piece.arm_mm_per_n = sum.arm;
        const Gain gain = gained(piece, upto);
        sum = {sum.turn + gain.turn, sum.arm + gain.arm};
    }
    return push;
}

Compliance push_compliance(const Flexibility& flexibility, const AxialPush& push, double x_mm) {
    return compliance_at(flexibility, push, beam_place(flexibility, std::min(x_mm, push.at_mm)),
                         x_mm);
}

Compliance push_compliance(const Flexibility& flexibility,
                           const AxialPush& push,
                           const BeamPlace& place) {
    return compliance_at(flexibility, push, place, place.x_mm);
}

}  // namespace backspring
