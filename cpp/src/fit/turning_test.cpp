#include "backspring/fit/turning_test.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "backspring/core/require.hpp"

namespace backspring {
namespace {

constexpr double kFarthestReadMm = 10.0;
constexpr int kQuarters = 4;
// A direction is known where the readings hold all of it but for rounding.
constexpr double kHeld = 1e-9;

// The unknowns: two true readings, eccentricity's two parts, oval along the quarters.
namespace turned {
enum Unknown { half_stop, closed, ecc_cos, ecc_sin, oval, count };
}  // namespace turned
using TurnedRow = Eigen::Matrix<double, 1, turned::count>;

/// Whole numbers, where a cosine of a quarter turn would leave rounding.
struct Quarter {
    double cosine, sine, twice;
};

Quarter of_quarter(int k) {
    constexpr std::array<double, kQuarters> cosine{1.0, 0.0, -1.0, 0.0};
    constexpr std::array<double, kQuarters> sine{0.0, 1.0, 0.0, -1.0};
    const auto i = static_cast<std::size_t>(k);
    return {cosine[i], sine[i], k % 2 == 0 ? 1.0 : -1.0};
}

TurnedRow closed_row(int quarter) {
    const Quarter q = of_quarter(quarter);
    TurnedRow row = TurnedRow::Zero();
    row[turned::closed] = 1.0;
    row[turned::ecc_cos] = 2.0 * q.cosine;
    row[turned::ecc_sin] = 2.0 * q.sine;
    return row;
}

/// With (phi - a1) for phi: cos - sin of it in the two parts.
TurnedRow half_stop_row(int quarter) {
    const Quarter q = of_quarter(quarter);
    TurnedRow row = TurnedRow::Zero();
    row[turned::half_stop] = 1.0;
    row[turned::ecc_cos] = q.cosine - q.sine;
    row[turned::ecc_sin] = q.cosine + q.sine;
    row[turned::oval] = -2.0 * q.twice;
    return row;
}

struct TurnedRows {
    Eigen::MatrixXd rows;
    Eigen::VectorXd read_mm;
};

TurnedRows turned_rows(const std::vector<TurnedReading>& readings) {
    std::vector<TurnedRow> rows;
    std::vector<double> read;
    const auto add = [&](const TurnedRow& row, const std::optional<double>& value) {
        if (!value) return;
        rows.push_back(row);
        read.push_back(*value);
    };
    for (const TurnedReading& each : readings) {
        add(half_stop_row(each.quarter), each.half_stop_mm);
        add(closed_row(each.quarter), each.closed_mm);
    }
    TurnedRows system{Eigen::MatrixXd(rows.size(), turned::count), Eigen::VectorXd(read.size())};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        system.rows.row(static_cast<Eigen::Index>(i)) = rows[i];
        system.read_mm[static_cast<Eigen::Index>(i)] = read[i];
    }
    return system;
}

void require_turned(const std::vector<TurnedReading>& readings) {
    Requirements rules;
    std::set<int> seen;
    bool any = false;
    for (const TurnedReading& each : readings) {
        rules.in_range("quarter", each.quarter, 0.0, kQuarters - 1.0, "");
        rules.require(seen.insert(each.quarter).second, "quarter",
                      [] { return std::string("is given twice"); });
        const auto judge = [&](const char* key, const std::optional<double>& value) {
            any = any || value;
            if (value) rules.in_range(key, *value, -kFarthestReadMm, kFarthestReadMm, "mm");
        };
        judge("half_stop", each.half_stop_mm);
        judge("closed", each.closed_mm);
    }
    rules.require(any, "readings", [] { return std::string("must hold at least one reading"); });
    rules.throw_if_any();
}

double spread_mm(const std::vector<TurnedReading>& readings,
                 std::optional<double> TurnedReading::*which) {
    std::vector<double> values;
    for (const TurnedReading& each : readings) {
        if (each.*which) values.push_back(*(each.*which));
    }
    if (values.empty()) return 0.0;
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    return *most - *least;
}

}  // namespace

TurningTest turning_test(const std::vector<TurnedReading>& readings) {
    require_turned(readings);
    const TurnedRows system = turned_rows(readings);
    const auto solved = system.rows.completeOrthogonalDecomposition();
    const Eigen::VectorXd x = solved.solve(system.read_mm);
    const Eigen::MatrixXd held = solved.pseudoInverse() * system.rows;
    const auto is_known = [&](turned::Unknown j) { return held(j, j) > 1.0 - kHeld; };
    const auto known = [&](turned::Unknown j) {
        return is_known(j) ? std::optional(x[j]) : std::nullopt;
    };
    TurningTest result;
    result.half_stop_mm = known(turned::half_stop);
    result.closed_mm = known(turned::closed);
    if (is_known(turned::ecc_cos) && is_known(turned::ecc_sin)) {
        result.eccentricity_mm = std::hypot(x[turned::ecc_cos], x[turned::ecc_sin]);
    }
    if (is_known(turned::oval)) result.oval_mm = std::abs(x[turned::oval]);
    const Eigen::Index spare = system.rows.rows() - solved.rank();
    if (spare > 0) {
        const double squares = (system.rows * x - system.read_mm).squaredNorm();
        result.scatter_mm = std::sqrt(squares / static_cast<double>(spare));
    }
    result.half_stop_spread_mm = spread_mm(readings, &TurnedReading::half_stop_mm);
    result.closed_spread_mm = spread_mm(readings, &TurnedReading::closed_mm);
    return result;
}

}  // namespace backspring
