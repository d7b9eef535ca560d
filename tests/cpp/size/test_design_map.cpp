#include <cmath>
#include <limits>

#include "../sensitivity/figures_of.hpp"
#include "backspring/size/design_map.hpp"
#include "catch.hpp"
#include "designs.hpp"
#include "measures.hpp"

using namespace backspring;

TEST_CASE("a map holds the check of every pair", "[shop][property]") {
    const Design design = designs::heron();
    const SizeDimension thickness = measure("spring.thickness"), preload = measure("fit.preload");
    const Eigen::ArrayXd x{{1.0, 3.4, 3.8, 4.2}}, y{{0.5, 0.9, 1.1}};
    const DesignMap map = design_map(design, thickness, x, preload, y);
    REQUIRE((map.pull_n.rows() == 3 && map.pull_n.cols() == 4));
    for (Eigen::Index i = 0; i < 3; ++i) {
        CHECK(std::isnan(map.pull_n(i, 0)));  // the pin hole is wider than the spring is thick
        CHECK(std::isnan(map.yield_margin(i, 0)));
        for (Eigen::Index j = 1; j < 4; ++j) {
            auto checked = figures_of(with_size(with_size(design, thickness, x[j]), preload, y[i]));
            CHECK_THAT(map.pull_n(i, j), WithinRel(checked["peak_pull_n"], 1e-12));
            CHECK_THAT(map.yield_margin(i, j), WithinRel(checked["yield_margin"], 1e-12));
        }
    }
}

TEST_CASE("a map refuses sizes that are none", "[shop][bad input]") {
    const Design design = designs::heron();
    const SizeDimension x = measure("spring.width"), y = measure("fit.preload");
    const Eigen::ArrayXd some{{0.5, 1.0}}, bad{{0.5, std::numeric_limits<double>::quiet_NaN()}};
    CHECK_THROWS_WITH(design_map(design, x, some, x, some),
                      ContainsSubstring("spring.width: is given twice"));
    CHECK_THROWS_WITH(design_map(design, x, Eigen::ArrayXd(), y, bad),
                      ContainsSubstring("spring.width: needs at least one size") &&
                          ContainsSubstring("fit.preload: must be a finite number"));
    const Eigen::ArrayXd thousand = Eigen::ArrayXd::LinSpaced(1000, 0.5, 1.0);
    const Eigen::ArrayXd more = Eigen::ArrayXd::LinSpaced(1001, 2.0, 3.0);
    CHECK_THROWS_WITH(design_map(design, x, more, y, thousand),
                      "sizes: must give at most 1000000 pairs");
}

TEST_CASE("without a nail nick a map tells margins alone", "[shop][property]") {
    Design bare = designs::heron();
    bare.own().blade.nail_nick_mm.reset();
    const Eigen::ArrayXd widths{{2.0, 2.3}}, preloads{{0.5, 0.9}};
    const DesignMap map =
        design_map(bare, measure("spring.width"), widths, measure("fit.preload"), preloads);
    CHECK(map.pull_n.isNaN().all());
    CHECK((map.yield_margin > 0.0).all());
}
