#include <limits>

#include "figures.hpp"
#include "questions.hpp"

using namespace backspring;

namespace fuzz {
namespace {

/// A straight or a bent model of a few unknowns, or one that has no answer in places.
Residuals model_of(const Eigen::MatrixXd& rates,
                   const Eigen::VectorXd& observed,
                   int kind,
                   const Eigen::VectorXd& x) {
    Residuals residuals;
    residuals.values = rates * x - observed;
    if (kind % 3 == 1) residuals.values = residuals.values.array().cube();
    if (kind % 3 == 2 && x.size() > 0 && x[0] > 2.0)
        residuals.values *= std::numeric_limits<double>::quiet_NaN();
    if (kind % 5 == 0 && kind % 3 == 0) residuals.jacobian = rates;
    return residuals;
}

}  // namespace

Eigen::VectorXd numbers_of(Bytes& bytes, std::size_t most) {
    Eigen::VectorXd numbers(static_cast<Eigen::Index>(bytes.one_of(most + 1)));
    for (double& each : numbers) each = bytes.number(1.0, -10.0, 10.0);
    return numbers;
}

void ask_least_squares(Bytes& bytes) {
    std::vector<Unknown> unknowns(bytes.one_of(5));
    for (Unknown& each : unknowns) {
        each.start = bytes.number(0.0, -1.0, 1.0);
        if (bytes.flag()) each.least = bytes.number(-1.0, -10.0, 10.0);
        if (bytes.flag()) each.greatest = bytes.number(1.0, -10.0, 10.0);
        each.expected = bytes.number(0.0, -1.0, 1.0);
        if (bytes.flag()) each.expected_sd = bytes.number(1.0, 0.0, 10.0);
        if (bytes.flag()) each.step = bytes.number(1e-6, 1e-9, 1e-2);
    }
    const auto count = static_cast<Eigen::Index>(unknowns.size());
    const Eigen::VectorXd observed = numbers_of(bytes, 6);
    Eigen::MatrixXd rates(observed.size(), count);
    for (double& each : rates.reshaped()) each = bytes.between(-2.0, 2.0);
    if (bytes.one_of(4) == 0 && rates.size() > 0) rates.reshaped()[0] = bytes.hostile();
    const int kind = bytes.byte();
    const auto model = [&](const Eigen::VectorXd& x) { return model_of(rates, observed, kind, x); };
    const LeastSquaresRules rules{.most_iterations = 1 + bytes.byte(),
                                  .tolerance = bytes.number(1e-6, 1e-12, 1e-2)};
    const LeastSquares found = least_squares(model, unknowns, rules);
    Figures("least squares").hold(found.x);
    Figures("least squares").hold(found.residuals);
    Figures("least squares").hold(found.chi_squared);
    Figures("least squares").hold(found.expected_chi_squared);
    for (Eigen::Index i = 0; i < count; ++i) {
        require(!std::isnan(found.covariance(i, i)), "least squares: a variance that is none");
        require(found.x[i] >= unknowns[static_cast<std::size_t>(i)].least &&
                    found.x[i] <= unknowns[static_cast<std::size_t>(i)].greatest,
                "least squares: out of bounds");
    }
}

void ask_turning(Bytes& bytes) {
    std::vector<TurnedReading> readings(bytes.one_of(6));
    for (TurnedReading& each : readings) {
        each.quarter = static_cast<int>(bytes.one_of(6)) - 1;
        if (bytes.flag()) each.half_stop_mm = bytes.number(0.1, -1.0, 1.0);
        if (bytes.flag()) each.closed_mm = bytes.number(0.1, -1.0, 1.0);
    }
    const TurningTest test = turning_test(readings);
    for (const auto& value :
         {test.half_stop_mm, test.closed_mm, test.eccentricity_mm, test.oval_mm, test.scatter_mm})
        Figures("turning test").hold(value);
}

void ask_temper(Bytes& bytes) {
    TemperTable table;
    double at = bytes.between(100.0, 300.0), hardness = bytes.between(50.0, 66.0);
    for (std::size_t i = 2 + bytes.one_of(6); i > 0; --i) {
        table.points.push_back({at, {hardness, hardness - 1.0, hardness + 1.0}});
        at += bytes.between(1.0, 100.0);
        hardness -= bytes.between(0.0, 5.0);
    }
    if (bytes.flag()) table.hold_h = bytes.number(2.0, 0.1, 10.0);
    const Figures figures("temper");
    if (bytes.flag()) {
        std::optional<double> time;
        if (bytes.flag()) time = bytes.number(2.0, 0.1, 10.0);
        figures.hold(hardness_after_temper(table, bytes.number(250.0, 100.0, 700.0), time).value);
    } else {
        figures.hold(temper_for_hardness(table, bytes.number(55.0, 20.0, 68.0)));
    }
}

void ask_fitted_temper(Bytes& bytes) {
    const TemperFit fit{.time_constant = 18.0,
                        .mean = 13000.0,
                        .deviation = 2000.0,
                        .coefficients = {50.0, -6.0, bytes.between(-1.0, 0.0), 0.0},
                        .spread_hrc = 1.0};
    const Heat temper{bytes.number(250.0, 100.0, 700.0), bytes.number(2.0, 0.1, 10.0)};
    const Figures figures("temper");
    switch (bytes.one_of(3)) {
        case 0:
            return figures.hold(hardness_after_temper(fit, temper).value);
        case 1:
            return figures.hold(
                temper_for_hardness(fit, bytes.number(45.0, 20.0, 68.0), temper.time_h));
        default:
            return figures.hold(
                hardness_after_heat(
                    fit, temper, {bytes.number(200.0, 0.0, 700.0), bytes.number(1.0, 0.01, 10.0)})
                    .hardness_hrc.value);
    }
}

void ask_hardness(Bytes& bytes) {
    const double hardness = bytes.number(45.0, 20.0, 68.0);
    const Figures figures("hardness");
    switch (bytes.one_of(5)) {
        case 0:
            return figures.hold(vickers_hv(hardness));
        case 1:
            return figures.hold(tensile_mpa(hardness).value);
        case 2:
            return figures.hold(
                strength_from_hardness(hardness, {0.9, 0.85, 0.95}).yield_mpa.value);
        case 3:
            return figures.hold(temperature_factor(bytes.number(20.0, 20.0, 538.0)));
        default:
            return figures.hold(reliability_factor(bytes.number(0.9, 0.5, 0.999999)));
    }
}

void ask_chance(Bytes& bytes) {
    const auto whole = [&] {
        return static_cast<std::int64_t>(bytes.word()) - static_cast<std::int64_t>(bytes.byte());
    };
    const BatchChance chance = batch_chance(whole(), whole(), whole());
    for (const double value : {chance.share, chance.share_low, chance.share_high, chance.chance,
                               chance.chance_low, chance.chance_high}) {
        require(value >= 0.0 && value <= 1.0, "a chance outside 0 to 1");
    }
}

void ask_sample(Bytes& bytes) {
    const Eigen::ArrayXd values = numbers_of(bytes, 20).array();
    (void)summarise(values);
    const double point =
        quasi_random(bytes.word(), static_cast<int>(bytes.byte()) - 8, bytes.word());
    require(point > 0.0 && point < 1.0, "a point outside 0 to 1");
}

}  // namespace fuzz
