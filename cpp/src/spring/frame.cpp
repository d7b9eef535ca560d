#include "backspring/spring/frame.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <limits>
#include <numbers>

#include "backspring/spring/section.hpp"

namespace backspring {
namespace {

// Fitted to plane-stress models, see make_frame_give().
constexpr double kHoleLoss = 1.75;
constexpr double kAtMidHeight = 0.82;
constexpr double kTowardsEdge = 2.33;
constexpr double kLigament = 0.515;
constexpr double kThinnestLigament = 1.3;  // e/r, the least the fit knows

struct Liners {
    double thickness_mm;  // of both
    double height_mm;
    double modulus_mpa;
    double bending_nmm2;
    double shear_n;
};

Liners liners_of(const Frame& frame) {
    Elastic metal = liner_elastic(frame.liner_metal);
    metal.youngs_modulus_mpa = frame.liner_modulus_mpa.value_or(metal.youngs_modulus_mpa);
    // Scales shear as an even material with the liners' Poisson's ratio does: all but what counts.
    const Elastic scale{frame.scale_modulus_mpa.value_or(0.0), metal.poisson};
    const double h = *frame.liner_height_mm;
    const double liner = 2.0 * *frame.liner_thickness_mm;
    const double scales = 2.0 * frame.scale_thickness_mm.value_or(0.0);
    const auto of_both = [&](double by_liner, double by_scale) {
        return by_liner * liner + by_scale * scales;
    };
    return {
        .thickness_mm = liner,
        .height_mm = h,
        .modulus_mpa = metal.youngs_modulus_mpa,
        .bending_nmm2 =
            of_both(metal.youngs_modulus_mpa, scale.youngs_modulus_mpa) * h * h * h / 12.0,
        .shear_n = kShearFactor * h * of_both(shear_modulus_mpa(metal), shear_modulus_mpa(scale))};
}

double near_edge_mm(const Liners& liners, const PinSeat& pin) {
    return std::clamp(std::min(pin.depth_mm, liners.height_mm - pin.depth_mm), 0.0,
                      0.5 * liners.height_mm);
}

/// How much a pin beds itself into both liners.
double bedding_mm_per_n(const Liners& liners, const PinSeat& pin, bool outward) {
    if (pin.diameter_mm <= 0.0) return 0.0;
    const double edge = near_edge_mm(liners, pin), radius = 0.5 * pin.diameter_mm;
    const double share = 2.0 * edge / liners.height_mm;
    double beta = kAtMidHeight * share;
    if (outward == (pin.depth_mm < 0.5 * liners.height_mm)) {
        const double ligament = std::max(edge / radius, kThinnestLigament) - kLigament;
        beta += kTowardsEdge / ligament * (1.0 - share * share * share * share);
    }
    return beta / (liners.modulus_mpa * liners.thickness_mm);
}

/// What a hole adds to the flexibility of the beam there, int (1/(E I_net) - 1/(E I)) ds.
double hole_turn_rad_per_nmm(const Liners& liners, const PinSeat& pin) {
    using Rule = boost::math::quadrature::gauss<double, 20>;
    if (pin.diameter_mm <= 0.0) return 0.0;
    const double radius = 0.5 * pin.diameter_mm, height = liners.height_mm;
    const double offset =
        0.5 * height - std::max(near_edge_mm(liners, pin), kThinnestLigament * radius);
    const double whole = height * height * height / 12.0;
    const auto added = [&](double phi) {
        const Section net = make_section(1.0, height, 2.0 * radius * std::cos(phi), offset);
        return (whole / net.inertia_mm4 - 1.0) * radius * std::cos(phi);
    };
    constexpr double quarter = 0.5 * std::numbers::pi;
    return kHoleLoss * Rule::integrate(added, -quarter, quarter) / liners.bending_nmm2;
}

/// How the edge moves as the beam turns by one radian at a hole; also the moment there per force.
EdgeGive kinked_at(const LinerBeam& beam, double hole_mm, double x_mm) {
    const double length = beam.end_mm - beam.start_mm;
    const double behind = (hole_mm - beam.start_mm) / length, ahead = 1.0 - behind;
    return x_mm <= hole_mm ? EdgeGive{ahead * (x_mm - beam.start_mm), ahead}
                           : EdgeGive{behind * (beam.end_mm - x_mm), -behind};
}

/// The same of a beam without holes.
EdgeGive whole_give(const LinerBeam& liners, double x_mm, double xi_mm) {
    const double length = liners.end_mm - liners.start_mm;
    // Seen from the support beyond which the force is not: a force at b from the other one.
    const bool behind = x_mm <= xi_mm;
    const double x = behind ? x_mm - liners.start_mm : liners.end_mm - x_mm;
    const double b = behind ? liners.end_mm - xi_mm : xi_mm - liners.start_mm;
    const double bending = b / (6.0 * liners.bending_nmm2 * length);
    const double arm = length * length - b * b, side = behind ? 1.0 : -1.0;
    if (x < 0.0) return {bending * arm * x, side * bending * arm};
    const double shear = b / (liners.shear_n * length);
    return {bending * x * (arm - x * x) + shear * x,
            side * (bending * (arm - 3.0 * x * x) + shear)};
}

/// A measured movement of the middle pin, and the even beam that gives as much.
FrameGive measured(double seat_mm_per_n, double rear_mm, double pivot_mm) {
    const double arms = rear_mm * pivot_mm;
    FrameGive give;
    give.middle_mm_per_n = seat_mm_per_n;
    give.liners.start_mm = rear_mm;
    give.liners.end_mm = pivot_mm;
    give.liners.bending_nmm2 = arms * arms / (3.0 * (pivot_mm - rear_mm) * seat_mm_per_n);
    give.liners.shear_n = std::numeric_limits<double>::infinity();
    return give;
}

}  // namespace

Elastic liner_elastic(LinerMetal metal) {
    switch (metal) {
        case LinerMetal::brass:
            return {110000.0, 0.31};
        case LinerMetal::nickel_silver:
            return {120000.0, 0.32};
        case LinerMetal::stainless:
            return {190000.0, 0.28};
        case LinerMetal::titanium:
            return {110000.0, 0.32};
        case LinerMetal::steel:
            break;
    }
    return {205000.0, 0.29};
}

EdgeGive edge_give(const LinerBeam& liners, double x_mm, double xi_mm) {
    if (liners.bending_nmm2 <= 0.0) return {};
    EdgeGive give = whole_give(liners, x_mm, xi_mm);
    for (const BeamHole& hole : liners.holes) {
        const EdgeGive kinked = kinked_at(liners, hole.x_mm, x_mm);
        const double turn = hole.turn_rad_per_nmm * kinked_at(liners, hole.x_mm, xi_mm).mm_per_n;
        give.mm_per_n += turn * kinked.mm_per_n;
        give.rad_per_n += turn * kinked.rad_per_n;
    }
    return give;
}

EdgeUnder edge_under(const FrameGive& give, double span_mm, double x_mm) {
    const double rear_mm = -span_mm;
    EdgeGive middle = edge_give(give.liners, x_mm, 0.0);
    EdgeGive rear = edge_give(give.liners, x_mm, rear_mm);
    const double dent = give.middle_mm_per_n - edge_give(give.liners, 0.0, 0.0).mm_per_n;
    const double rear_dent = give.rear_mm_per_n - edge_give(give.liners, rear_mm, rear_mm).mm_per_n;
    middle.mm_per_n += dent * (1.0 + x_mm / span_mm);
    middle.rad_per_n += dent / span_mm;
    rear.mm_per_n -= rear_dent * x_mm / span_mm;
    rear.rad_per_n -= rear_dent / span_mm;
    return {{middle.mm_per_n + give.pivot_mm_per_n, middle.rad_per_n},
            {(middle.mm_per_n - rear.mm_per_n) / span_mm,
             (middle.rad_per_n - rear.rad_per_n) / span_mm}};
}

FrameGive make_frame_give(const Frame& frame, const FramePins& pins) {
    if (frame.seat_mm_per_n) return measured(*frame.seat_mm_per_n, pins.rear.x_mm, pins.pivot.x_mm);
    const Liners liners = liners_of(frame);
    const bool both_ends = pins.far_pivot.has_value();
    const PinSeat& last = both_ends ? *pins.far_pivot : pins.rear;
    const auto hole = [&](const PinSeat& pin) {
        return BeamHole{pin.x_mm, hole_turn_rad_per_nmm(liners, pin)};
    };
    const LinerBeam beam{.start_mm = last.x_mm,
                         .end_mm = pins.pivot.x_mm,
                         .bending_nmm2 = liners.bending_nmm2,
                         .shear_n = liners.shear_n,
                         .holes = {hole(pins.middle), hole(pins.rear)}};
    const auto give = [&](const PinSeat& pin, const PinSeat& pushed) {
        return edge_give(beam, pin.x_mm, pushed.x_mm).mm_per_n;
    };
    return {.middle_mm_per_n =
                give(pins.middle, pins.middle) + bedding_mm_per_n(liners, pins.middle, true),
            .rear_mm_per_n =
                give(pins.rear, pins.rear) + bedding_mm_per_n(liners, pins.rear, both_ends),
            .cross_mm_per_n = give(pins.middle, pins.rear),
            .pivot_mm_per_n = bedding_mm_per_n(liners, pins.pivot, false),
            .far_pivot_mm_per_n = both_ends ? bedding_mm_per_n(liners, last, false) : 0.0,
            .liners = beam};
}

double seat_mm_per_n(const FrameGive& give, double span_mm, double pivot_mm) {
    const double to_rear = pivot_mm / (span_mm + pivot_mm), to_pivot = 1.0 - to_rear;
    return give.middle_mm_per_n - 2.0 * to_rear * give.cross_mm_per_n +
           to_rear * to_rear * give.rear_mm_per_n + to_pivot * to_pivot * give.pivot_mm_per_n;
}

}  // namespace backspring
