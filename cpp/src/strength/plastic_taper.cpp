#include "backspring/strength/plastic_taper.hpp"

#include <algorithm>
#include <cmath>

#include "hinge.hpp"

namespace backspring {
namespace {

/// (artanh z / z - 1)/z^2 of z^2.
double bow(double square) {
    constexpr double small = 0.02;
    if (square > small) {
        const double z = std::sqrt(square);
        return (std::atanh(z) / z - 1.0) / square;
    }
    constexpr double of[] = {1.0 / 3.0,  1.0 / 5.0,  1.0 / 7.0,  1.0 / 9.0, 1.0 / 11.0,
                             1.0 / 13.0, 1.0 / 15.0, 1.0 / 17.0, 1.0 / 19.0};
    constexpr double tiny = 1e-4;
    double sum = 0.0;
    for (int i = square < tiny ? 3 : 8; i >= 0; --i) sum = sum * square + of[i];
    return sum;
}

/// A span of a taper about its own middle, y along it.
struct Local {
    Local(const PlasticTaper& taper, const StraightMoment& moment, const Span& span)
        : middle_mm(0.5 * (span.from_mm + span.to_mm)),
          length_mm(span.to_mm - span.from_mm),
          depth_mm(taper.thickness_at_mm(middle_mm)),
          slope(taper.taper),
          moment_nmm(moment.at_nmm(middle_mm)),
          fall_n(moment.fall_n),
          per_moment(12.0 / (taper.youngs_modulus_mpa * taper.width_mm)) {}

    double middle_mm, length_mm, depth_mm, slope, moment_nmm, fall_n, per_moment;
};

using Three = std::array<double, 3>;

/// Integrals of 1, y and y^2 over t^3, and of 1 and y over t.
struct OverDepth {
    explicit OverDepth(const Local& s) {
        const double d = s.length_mm, t = s.depth_mm, half = 0.5 * s.slope * d / t;
        const double square = half * half, left = 1.0 - square, g = bow(square);
        const double long_over = d / (t * t * t), over = 1.0 / (left * left);
        cubed = {long_over * over, -0.25 * s.slope * d * d * long_over * over / t,
                 0.25 * d * d * long_over * (g + square * over)};
        once = {d / t * (1.0 + square * g), -0.25 * s.slope * d * d * d / (t * t) * g};
    }

    Three cubed;
    std::array<double, 2> once;
};

/// What comes back of a moment's curvature, and of its moment about the middle.
double elastic_turn(const Local& s, const Three& cubed, std::size_t power) {
    return s.per_moment * (s.moment_nmm * cubed[power] - s.fall_n * cubed[power + 1]);
}

SpanTurn along_mid_line(SpanTurn turn, double cosine) {
    const double longer = 1.0 / cosine;
    turn.turn_rad *= longer;
    turn.first_mm *= longer;
    for (double& rate : turn.rates) rate *= longer;
    return turn;
}

}  // namespace

Span PlasticTaper::beyond(const StraightMoment& moment, double share) const {
    // The moment less the share is e - b y - a y^2 from the first station.
    const double per_square = share * yield_mpa * width_mm / 6.0;
    const double a = per_square * taper * taper;
    const double b = moment.fall_n + 2.0 * per_square * thickness_mm * taper;
    const double e = moment.at_nmm(from_mm) - per_square * thickness_mm * thickness_mm;
    const double square = b * b + 4.0 * a * e;
    if (square < 0.0) return {to_mm, from_mm};
    const double both = b + std::copysign(std::sqrt(square), b);
    if (both == 0.0) return e > 0.0 ? Span{from_mm, to_mm} : Span{to_mm, from_mm};
    const double near = 2.0 * e / both, far = -both / (2.0 * a);
    return {std::max(from_mm, from_mm + std::min(near, far)),
            std::min(to_mm, from_mm + std::max(near, far))};
}

double PlasticTaper::worst_mm(const StraightMoment& moment) const {
    // The moment is n + m t of the thickness t: largest over t^2 where m t = -2 n.
    const double per_depth = -moment.fall_n / taper;
    const double none = moment.at_nmm(from_mm) - per_depth * thickness_mm;
    const double x = from_mm + (-2.0 * none / per_depth - thickness_mm) / taper;
    return x > from_mm && x < to_mm ? x : from_mm;
}

SpanTurn yielded_turn(const PlasticTaper& taper, const StraightMoment& moment, const Span& span) {
    const Local s(taper, moment, span);
    const double per_mm = 12.0 / (taper.yield_mpa * taper.width_mm);
    // Under the root: square y^2 + linear y + level.
    const double square = 3.0 * s.slope * s.slope;
    const double linear = 6.0 * s.depth_mm * s.slope + per_mm * s.fall_n;
    const double level = 3.0 * s.depth_mm * s.depth_mm - per_mm * s.moment_nmm;
    const double d = s.length_mm, bend = 0.25 * square * d * d, lean = 0.5 * linear * d;
    const double first = std::sqrt(level + bend - lean), last = std::sqrt(level + bend + lean);
    const double sum = first + last, product = first * last;
    const double left = 2.0 * (product + level - bend);
    const double z2 = square * d * d / (sum * sum), g = bow(z2), cube = d * d * d;
    const double root_first = -linear * cube / (sum * sum * sum) * g;
    const Three rooted{
        2.0 * d * sum / (left * product), -linear * cube / (left * sum * product),
        2.0 * cube / (sum * sum * sum) * (g + linear * linear * d * d / (4.0 * left * product))};
    const OverDepth over(s);
    const double per_root = 2.0 * taper.yield_mpa / taper.youngs_modulus_mpa;
    SpanTurn turn{
        .middle_mm = s.middle_mm,
        .turn_rad = per_root * 2.0 * d / sum * (1.0 + z2 * g) - elastic_turn(s, over.cubed, 0),
        .first_mm = per_root * root_first - elastic_turn(s, over.cubed, 1)};
    for (std::size_t k = 0; k < 3; ++k) {
        turn.rates[k] = s.per_moment * (rooted[k] - over.cubed[k]);
    }
    return along_mid_line(turn, taper.cosine);
}

SpanTurn hinged_turn(const PlasticTaper& taper, const StraightMoment& moment, const Span& span) {
    const Local s(taper, moment, span);
    const OverDepth over(s);
    const double at_hinge = taper.yield_mpa / taper.youngs_modulus_mpa *
                            (2.0 / std::sqrt(3.0 * (1.0 - kTaperHingeShare)) -
                             3.0 * kTaperHingeShare * (1.0 + kTaperHingeSoftness));
    SpanTurn turn{
        .middle_mm = s.middle_mm,
        .turn_rad = at_hinge * over.once[0] + kTaperHingeSoftness * elastic_turn(s, over.cubed, 0),
        .first_mm = at_hinge * over.once[1] + kTaperHingeSoftness * elastic_turn(s, over.cubed, 1)};
    for (std::size_t k = 0; k < 3; ++k) {
        turn.rates[k] = kTaperHingeSoftness * s.per_moment * over.cubed[k];
    }
    return along_mid_line(turn, taper.cosine);
}

}  // namespace backspring
