#include <cmath>
#include <limits>

#include "backspring/tolerance/sample_summary.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("a ladder's mean, deviation and quantiles are known", "[sample][closed form]") {
    // 0 to 100 in ones, in any order: mean 50, variance (n^2 - 1)/12 with n = 101.
    Eigen::ArrayXd ladder = Eigen::ArrayXd::LinSpaced(101, 0.0, 100.0);
    ladder.reverseInPlace();
    const SampleSummary sum = summarise(ladder);
    CHECK(sum.count == 101);
    CHECK_THAT(sum.mean, WithinRel(50.0, 1e-14));
    CHECK_THAT(sum.sd, WithinRel(std::sqrt((101.0 * 101.0 - 1.0) / 12.0), 1e-14));
    for (std::size_t i = 0; i < kQuantiles.size(); ++i) {
        CHECK_THAT(sum.quantiles[i], WithinRel(100.0 * kQuantiles[i], 1e-12));
    }
}

TEST_CASE("what is no number is left out of a sample", "[sample][property]") {
    const double nan = std::nan(""), infinite = std::numeric_limits<double>::infinity();
    const SampleSummary sum = summarise(Eigen::ArrayXd{{nan, 1.0, infinite, 3.0}});
    CHECK(sum.count == 2);
    CHECK(sum.mean == 2.0);
    CHECK(sum.sd == 1.0);
    CHECK(sum.quantiles[3] == 2.0);
    for (const Eigen::ArrayXd& none : {Eigen::ArrayXd(), Eigen::ArrayXd{{nan, nan}}}) {
        const SampleSummary empty = summarise(none);
        CHECK(empty.count == 0);
        CHECK(std::isnan(empty.mean));
        CHECK(std::isnan(empty.sd));
        REQUIRE(empty.quantiles.size() == kQuantiles.size());
        for (const double each : empty.quantiles) CHECK(std::isnan(each));
    }
}

TEST_CASE("values all alike have no spread, not even by rounding", "[sample][property]") {
    const SampleSummary sum = summarise(Eigen::ArrayXd::Constant(1000, 0.1));
    CHECK(sum.sd == 0.0);
    CHECK(sum.mean == 0.1);
    for (const double each : sum.quantiles) CHECK(each == 0.1);
}
