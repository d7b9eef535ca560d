#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/tolerance/quasi_random.hpp"
#include "backspring/tolerance/variance_shares.hpp"
#include "catch.hpp"

using namespace backspring;

namespace {

/// A sample of f over three uniform inputs from 0 to 1, and its mixed ones.
template <class F>
std::optional<std::vector<VarianceShare>> shares_of(F f, int count) {
    Eigen::ArrayXd a(count), b(count);
    std::vector<Eigen::ArrayXd> mixed(3, Eigen::ArrayXd(count));
    for (int i = 0; i < count; ++i) {
        const auto u = [&](int d) { return quasi_random(static_cast<std::uint32_t>(i), d, 1); };
        std::array<double, 3> first{u(0), u(1), u(2)}, second{u(3), u(4), u(5)};
        a[i] = f(first);
        b[i] = f(second);
        for (std::size_t k = 0; k < 3; ++k) {
            auto both = first;
            both[k] = second[k];
            mixed[k][i] = f(both);
        }
    }
    return variance_shares(a, b, mixed);
}

}  // namespace

TEST_CASE("shares of a sum are those of the squares of its slopes", "[variance_shares]") {
    const auto shares =
        shares_of([](const auto& x) { return 100.0 + 3.0 * x[0] - 2.0 * x[1]; }, 4096).value();
    // Variance of a sum of independent parts: 9 and 4 of 13.
    CHECK_THAT(shares[0].first, WithinAbs(9.0 / 13.0, 1e-3));
    CHECK_THAT(shares[0].total, WithinAbs(9.0 / 13.0, 1e-3));
    CHECK_THAT(shares[1].first, WithinAbs(4.0 / 13.0, 1e-3));
    CHECK(shares[2].first == 0.0);
    CHECK(shares[2].total == 0.0);
}

TEST_CASE("a product shares what neither input does alone", "[variance_shares]") {
    // x y, both 0 to 1: V = 7/144; each alone (1/4)(1/12) = 3/144; together 1/144.
    const auto shares = shares_of([](const auto& x) { return x[0] * x[1]; }, 4096).value();
    CHECK_THAT(shares[0].first, WithinAbs(3.0 / 7.0, 2e-3));
    CHECK_THAT(shares[0].total, WithinAbs(4.0 / 7.0, 2e-3));
}

TEST_CASE("rows without a number are left out", "[variance_shares]") {
    const auto spoiled = [](const auto& x) {
        return x[2] > 0.9 ? std::nan("") : 3.0 * x[0] - 2.0 * x[1];
    };
    const auto shares = shares_of(spoiled, 4096).value();
    CHECK_THAT(shares[0].first, WithinAbs(9.0 / 13.0, 2e-2));
}

TEST_CASE("what does not vary has no shares", "[variance_shares]") {
    CHECK_FALSE(shares_of([](const auto&) { return 4.0; }, 64));
    CHECK_FALSE(shares_of([](const auto&) { return std::nan(""); }, 64));
    const Eigen::ArrayXd two = Eigen::ArrayXd::Zero(2), three = Eigen::ArrayXd::Zero(3);
    CHECK_THROWS_WITH(variance_shares(two, two, {three}),
                      "samples: must have as many rows as the first, 2");
}
