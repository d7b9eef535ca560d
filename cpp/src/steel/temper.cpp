#include "backspring/steel/temper.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"
#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr double kZeroCelsiusK = 273.15;

/// Refuses what is off the ground that was measured.
void require_within(NoticeCode code, double value, double low, double high, Quantity quantity) {
    if (value >= low && value <= high) return;
    throw OutOfRange(
        {.code = code,
         .parameters = {
             {"low", low, quantity}, {"high", high, quantity}, {"value", value, quantity}}});
}

[[noreturn]] void refuse_above(NoticeCode code, double value, double high, Quantity quantity) {
    throw OutOfRange(
        {.code = code, .parameters = {{"high", high, quantity}, {"value", value, quantity}}});
}

void require_fit(const TemperFit& fit) {
    Requirements rules;
    rules.in_range("deviation", fit.deviation, 0.0, 1e6, "", true);
    rules.throw_if_any();
}

double hardness_hrc(const TemperFit& fit, double parameter) {
    const double x = (parameter - fit.mean) / fit.deviation;
    const auto& [c0, c1, c2, c3] = fit.coefficients;
    return c0 + x * (c1 + x * (c2 + x * c3));
}

// The law itself, where its arguments have been judged.
double parameter_of(const TemperFit& fit, double temperature_c, double time_h) {
    return (temperature_c + kZeroCelsiusK) * (fit.time_constant + std::log10(time_h)) / 1000.0;
}

Band with_band(const TemperFit& fit, double parameter) {
    const double hrc = hardness_hrc(fit, parameter);
    if (!(hrc >= fit.softest_hrc)) {
        throw OutOfRange({.code = NoticeCode::later_too_soft,
                          .parameters = {{"low", fit.softest_hrc, Quantity::hardness},
                                         {"value", hrc, Quantity::hardness}}});
    }
    return {.value = hrc, .low = hrc - fit.spread_hrc, .high = hrc + fit.spread_hrc};
}

void require_temper(const TemperFit& fit, const Heat& temper) {
    require_within(NoticeCode::temper_range, temper.temperature_c, fit.coolest_c, fit.hottest_c,
                   Quantity::temperature);
    require_within(NoticeCode::temper_time_range, temper.time_h, fit.shortest_h, fit.longest_h,
                   Quantity::time);
}

void require_later(const TemperFit& fit, const Heat& later) {
    if (!(later.temperature_c <= fit.hottest_c)) {
        refuse_above(NoticeCode::later_heat_hottest, later.temperature_c, fit.hottest_c,
                     Quantity::temperature);
    }
    if (!(later.time_h > 0.0 && later.time_h <= fit.longest_h)) {
        refuse_above(NoticeCode::later_time_longest, later.time_h, fit.longest_h, Quantity::time);
    }
}

}  // namespace

double temper_parameter(const TemperFit& fit, const Heat& heat) {
    Requirements rules;
    rules.in_range("temperature_c", heat.temperature_c, -kZeroCelsiusK, 1e6, "C", true);
    rules.in_range("time_h", heat.time_h, 0.0, 1e9, "h", true);
    rules.throw_if_any();
    return parameter_of(fit, heat.temperature_c, heat.time_h);
}

Band hardness_after_temper(const TemperFit& fit, const Heat& temper) {
    require_fit(fit);
    require_temper(fit, temper);
    return with_band(fit, parameter_of(fit, temper.temperature_c, temper.time_h));
}

double temper_for_hardness(const TemperFit& fit, double hrc, double time_h) {
    require_fit(fit);
    require_temper(fit, {.temperature_c = fit.coolest_c, .time_h = time_h});
    const auto excess = [&](double temperature_c) {
        return hardness_hrc(fit, parameter_of(fit, temperature_c, time_h)) - hrc;
    };
    const double at_coolest = excess(fit.coolest_c), at_hottest = excess(fit.hottest_c);
    const double softest = std::max(fit.softest_hrc, at_hottest + hrc);
    const double hardest = at_coolest + hrc;
    if (!(hrc >= softest && hrc <= hardest)) {
        throw OutOfRange({.code = NoticeCode::hardness_after_hold,
                          .parameters = {{"low", softest, Quantity::hardness},
                                         {"high", hardest, Quantity::hardness},
                                         {"value", hrc, Quantity::hardness},
                                         {"time", time_h, Quantity::time}}});
    }
    return find_root(excess, fit.coolest_c, fit.hottest_c, at_coolest, at_hottest);
}

HeatEffect hardness_after_heat(const TemperFit& fit, const Heat& temper, const Heat& later) {
    const Band before = hardness_after_temper(fit, temper);
    require_later(fit, later);
    const bool extrapolated = later.time_h < fit.shortest_h;
    if (later.temperature_c < fit.coolest_c) {
        if (later.time_h <= temper.time_h) return {before, extrapolated};
        require_within(NoticeCode::later_heat_range, later.temperature_c, fit.coolest_c,
                       fit.hottest_c, Quantity::temperature);
    }
    const double parameter = parameter_of(fit, temper.temperature_c, temper.time_h);
    const double later_k = later.temperature_c + kZeroCelsiusK;
    const double same_h = std::pow(10.0, 1000.0 * parameter / later_k - fit.time_constant);
    const double sum_h = same_h + later.time_h;
    return {with_band(fit, parameter_of(fit, later.temperature_c, sum_h)), extrapolated};
}

}  // namespace backspring
