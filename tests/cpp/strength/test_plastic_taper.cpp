#include <algorithm>
#include <cmath>
#include <vector>

#include "backspring/strength/elastic_plastic.hpp"
#include "backspring/strength/plastic_taper.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

struct BentTaper {
    PlasticTaper taper;
    StraightMoment moment;
};

/// Tapers that thin, thicken and stay, under moments a little and far beyond yielding at one end.
std::vector<BentTaper> bent_tapers() {
    std::vector<BentTaper> all;
    for (const double taper : {0.0, -0.03, 0.05, -1e-9}) {
        for (const double share : {1.02, 1.1, 1.3}) {
            for (const double fall : {20.0, 90.0}) {
                const PlasticTaper stretch{.from_mm = 2.0,
                                           .to_mm = 9.0,
                                           .thickness_mm = 3.3,
                                           .taper = taper,
                                           .width_mm = 2.3,
                                           .cosine = 0.95,
                                           .youngs_modulus_mpa = 205000.0,
                                           .yield_mpa = 1100.0};
                const double at_start = share * stretch.yield_moment_nmm(2.0);
                all.push_back({stretch, {at_start + fall * 2.0, fall}});
            }
        }
    }
    return all;
}

Span overlap_of(const Span& a, const Span& b) {
    return {std::max(a.from_mm, b.from_mm), std::min(a.to_mm, b.to_mm)};
}

/// Where it yields, but for the hinges.
Span span_short_of_hinges(const BentTaper& c) {
    const Span hinge = c.taper.beyond(c.moment, 1.499);
    const Span yields = c.taper.beyond(c.moment, 1.0);
    if (hinge.from_mm >= hinge.to_mm) return yields;
    return hinge.from_mm > yields.from_mm ? overlap_of(yields, {yields.from_mm, hinge.from_mm})
                                          : overlap_of(yields, {hinge.to_mm, yields.to_mm});
}

double curvature_left(const BentTaper& c, double x_mm) {
    const PlasticSection section =
        make_plastic_section(c.taper.width_mm, c.taper.thickness_at_mm(x_mm),
                             c.taper.youngs_modulus_mpa, c.taper.yield_mpa);
    return residual_curvature_per_mm(section, c.moment.at_nmm(x_mm));
}

/// By Gauss's three places in each of many parts, section by section.
template <class Value>
double summed_along(const Span& span, Value value) {
    constexpr int parts = 2000;
    const double half = 0.5 * (span.to_mm - span.from_mm) / parts, away = half * std::sqrt(0.6);
    double sum = 0.0;
    for (int i = 0; i < parts; ++i) {
        const double middle = span.from_mm + (2 * i + 1) * half;
        sum += 8.0 * value(middle) + 5.0 * (value(middle - away) + value(middle + away));
    }
    return sum * half / 9.0;
}

}  // namespace

TEST_CASE("what stays of a taper is the integral of its sections", "[strength][property]") {
    int yielded = 0;
    for (const BentTaper& c : bent_tapers()) {
        const Span span = span_short_of_hinges(c);
        if (span.to_mm - span.from_mm < 0.1) continue;
        ++yielded;
        CAPTURE(c.taper.taper, c.moment.fall_n, span.from_mm, span.to_mm);
        const SpanTurn turn = yielded_turn(c.taper, c.moment, span);
        const double whole = summed_along(span, [&](double x) { return curvature_left(c, x); });
        const double first = summed_along(
            span, [&](double x) { return curvature_left(c, x) * (x - turn.middle_mm); });
        // Near yielding what stays is a small difference of what bends and what comes back.
        CHECK_THAT(turn.turn_rad * c.taper.cosine, WithinRel(whole, 1e-10));
        CHECK_THAT(turn.first_mm * c.taper.cosine,
                   WithinRel(first, 1e-9) || WithinAbs(0.0, 1e-9 * whole));
    }
    CHECK(yielded > 12);
}

TEST_CASE("a taper's rates are those of its turn", "[strength][property]") {
    for (const BentTaper& c : bent_tapers()) {
        const Span yields = span_short_of_hinges(c);
        // Inside where it yields, so that a moment somewhat less makes all of it yield, too.
        const Span span{std::lerp(yields.from_mm, yields.to_mm, 0.2),
                        std::lerp(yields.from_mm, yields.to_mm, 0.7)};
        if (span.to_mm - span.from_mm < 0.1) continue;
        CAPTURE(c.taper.taper, c.moment.fall_n, span.from_mm, span.to_mm);
        const SpanTurn turn = yielded_turn(c.taper, c.moment, span);
        constexpr double step = 1e-3;
        const auto with = [&](double at_middle, double rise) {
            const StraightMoment moment{c.moment.root_nmm + at_middle - rise * turn.middle_mm,
                                        c.moment.fall_n - rise};
            return yielded_turn(c.taper, moment, span);
        };
        const auto rate = [&](double more, double less) { return (more - less) / (2.0 * step); };
        CHECK_THAT(rate(with(step, 0.0).turn_rad, with(-step, 0.0).turn_rad),
                   WithinRel(turn.rates[0], 1e-6));
        CHECK_THAT(rate(with(0.0, step).turn_rad, with(0.0, -step).turn_rad),
                   WithinAbs(turn.rates[1], 1e-6 * turn.rates[0]));
        CHECK_THAT(rate(with(0.0, step).first_mm, with(0.0, -step).first_mm),
                   WithinRel(turn.rates[2], 1e-6));
    }
}

TEST_CASE("a taper yields up to where the moment is the yield moment", "[strength][property]") {
    for (const BentTaper& c : bent_tapers()) {
        const Span yields = c.taper.beyond(c.moment, 1.0);
        if (yields.from_mm >= yields.to_mm) continue;
        for (const double x : {yields.from_mm, yields.to_mm}) {
            if (x == c.taper.from_mm || x == c.taper.to_mm) continue;
            CHECK_THAT(c.moment.at_nmm(x), WithinRel(c.taper.yield_moment_nmm(x), 1e-12));
        }
        const double middle = 0.5 * (yields.from_mm + yields.to_mm);
        CHECK(c.moment.at_nmm(middle) > c.taper.yield_moment_nmm(middle));
    }
}

TEST_CASE("the greatest of straight moments is the greatest at every station",
          "[strength][property]") {
    const std::vector<Load> both{{24.0, 40.0}, {33.0, 90.0}}, one{{30.0, 125.0}};
    std::vector<MomentPart> parts = moments_of(both);
    add_moments(one, parts);
    keep_greatest(parts);
    for (double x = 0.0; x < 33.0; x += 0.25) {
        const double of_both = 40.0 * std::max(24.0 - x, 0.0) + 90.0 * (33.0 - x);
        const double of_one = 125.0 * std::max(30.0 - x, 0.0);
        const auto part = std::find_if(parts.rbegin(), parts.rend(),
                                       [&](const MomentPart& p) { return p.from_mm <= x; });
        CHECK_THAT(part->moment.at_nmm(x), WithinRel(std::max(of_both, of_one), 1e-12));
    }
}
