#include "backspring/steel/temper_table.hpp"

#include <algorithm>
#include <string>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"

namespace backspring {
namespace {

constexpr double kLeastOfHold = 0.5;
constexpr double kMostOfHold = 4.0;

void require_table(const TemperTable& table) {
    Requirements rules;
    const auto& points = table.points;
    rules.require(points.size() >= 2, "points", [] { return std::string("must be two or more"); });
    for (std::size_t i = 1; i < points.size(); ++i) {
        rules.require(points[i].temper_c > points[i - 1].temper_c, "points",
                      [] { return std::string("temper must rise from row to row"); });
        rules.require(points[i].hardness_hrc.value <= points[i - 1].hardness_hrc.value, "points",
                      [] { return std::string("hardness must not rise from row to row"); });
    }
    rules.throw_if_any();
}

void require_time(const TemperTable& table, std::optional<double> time_h) {
    if (!table.hold_h || !time_h) return;
    const double low = kLeastOfHold * *table.hold_h, high = kMostOfHold * *table.hold_h;
    if (*time_h >= low && *time_h <= high) return;
    throw OutOfRange({.code = NoticeCode::temper_hold,
                      .parameters = {{"hold", *table.hold_h, Quantity::time},
                                     {"low", low, Quantity::time},
                                     {"high", high, Quantity::time},
                                     {"value", *time_h, Quantity::time}}});
}

double between(double a, double b, double share) { return a + (b - a) * share; }

}  // namespace

Band hardness_after_temper(const TemperTable& table,
                           double temper_c,
                           std::optional<double> time_h) {
    require_table(table);
    const auto& points = table.points;
    if (!(temper_c >= points.front().temper_c && temper_c <= points.back().temper_c)) {
        throw OutOfRange({.code = NoticeCode::temper_range,
                          .parameters = {{"low", points.front().temper_c, Quantity::temperature},
                                         {"high", points.back().temper_c, Quantity::temperature},
                                         {"value", temper_c, Quantity::temperature}}});
    }
    require_time(table, time_h);
    const auto above =
        std::upper_bound(points.begin() + 1, points.end() - 1, temper_c,
                         [](double c, const TemperPoint& p) { return c < p.temper_c; });
    const TemperPoint &a = *(above - 1), &b = *above;
    const double share = (temper_c - a.temper_c) / (b.temper_c - a.temper_c);
    return {.value = between(a.hardness_hrc.value, b.hardness_hrc.value, share),
            .low = between(a.hardness_hrc.low, b.hardness_hrc.low, share),
            .high = between(a.hardness_hrc.high, b.hardness_hrc.high, share)};
}

double temper_for_hardness(const TemperTable& table, double hardness_hrc) {
    require_table(table);
    const auto& points = table.points;
    const double softest = points.back().hardness_hrc.value;
    const double hardest = points.front().hardness_hrc.value;
    if (!(hardness_hrc >= softest && hardness_hrc <= hardest)) {
        throw OutOfRange({.code = NoticeCode::hardness_range,
                          .parameters = {{"low", softest, Quantity::hardness},
                                         {"high", hardest, Quantity::hardness},
                                         {"value", hardness_hrc, Quantity::hardness}}});
    }
    const auto reached = std::find_if(points.begin(), points.end(), [&](const TemperPoint& p) {
        return p.hardness_hrc.value <= hardness_hrc;
    });
    if (reached == points.begin()) return reached->temper_c;
    const TemperPoint &a = *(reached - 1), &b = *reached;
    const double share =
        (a.hardness_hrc.value - hardness_hrc) / (a.hardness_hrc.value - b.hardness_hrc.value);
    return between(a.temper_c, b.temper_c, share);
}

Band hardness_after_heat(const TemperTable& table, double temper_c, double later_c) {
    const Band before = hardness_after_temper(table, temper_c);
    if (!(later_c <= temper_c)) {
        throw OutOfRange({.code = NoticeCode::later_above_temper,
                          .parameters = {{"temper", temper_c, Quantity::temperature},
                                         {"value", later_c, Quantity::temperature}}});
    }
    return before;
}

}  // namespace backspring
