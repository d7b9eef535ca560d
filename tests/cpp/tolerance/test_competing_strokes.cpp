#include <algorithm>

#include "backspring/many/batch.hpp"
#include "backspring/tolerance/local_spread.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

/// One row of the design itself.
std::vector<Change> as_it_is(const Design& design) {
    return {{"fit.preload", Eigen::ArrayXd::Constant(1, design.own().fit.preload_mm)}};
}

/// The Heron with a rear corner sharp enough that its second stroke pulls as hard as its first.
Design even_strokes() {
    Design design = designs::heron();
    double low = 0.3, high = 0.7;
    for (int i = 0; i < 40; ++i) {
        design.own().tang.corner_open_mm = 0.5 * (low + high);
        const Batch pulls = check_many(
            design, as_it_is(design),
            {.threads = 1, .columns = {"peak_pull_from_closed_n", "peak_pull_from_half_stop_n"}});
        const bool harder = pulls.columns[1].values[0] > pulls.columns[0].values[0];
        (harder ? low : high) = design.own().tang.corner_open_mm;
    }
    return design;
}

/// Every face a twentieth of a millimetre off.
std::vector<Spread> of_faces() {
    return {{.key = "tang.open", .kind = SpreadKind::uniform, .size = 0.05},
            {.key = "tang.half_stop", .kind = SpreadKind::uniform, .size = 0.05},
            {.key = "tang.closed", .kind = SpreadKind::uniform, .size = 0.05}};
}

}  // namespace

TEST_CASE("the worst of two strokes that compete is the worst of all corners", "[tolerance]") {
    // With every dimension at one end or the other: the worst cases are the extremes of all of
    // them, and the first stroke's own would miss them.
    const Design design = even_strokes();
    const auto local = local_spreads(design, of_faces(), {"peak_pull_n"}).front();
    REQUIRE(local.strokes.size() == 2);
    double low = 1e9, high = 0.0;
    for (int corner = 0; corner < 8; ++corner) {
        Design there = design;
        const auto end = [&](int bit) { return (corner >> bit & 1) != 0 ? 0.05 : -0.05; };
        there.own().tang.open_mm += end(0);
        *there.own().tang.half_stop_mm += end(1);
        there.own().tang.closed_mm += end(2);
        const Batch pull =
            check_many(there, as_it_is(there), {.threads = 1, .columns = {"peak_pull_n"}});
        low = std::min(low, pull.columns[0].values[0]);
        high = std::max(high, pull.columns[0].values[0]);
    }
    CHECK_THAT(local.worst_low, WithinRel(low, 1e-9));
    CHECK_THAT(local.worst_high, WithinRel(high, 1e-9));
    CHECK(local.root_sum_square_sd >= local.strokes[1].root_sum_square_sd);
    CHECK(local.root_sum_square_sd >= local.strokes[0].root_sum_square_sd);
    CHECK(local.slopes == local.strokes[0].slopes);
}

TEST_CASE("two strokes compete whichever of them is the harder", "[tolerance]") {
    for (const double by_mm : {-1e-3, 1e-3}) {
        Design design = even_strokes();
        design.own().tang.corner_open_mm += by_mm;
        const auto local = local_spreads(design, of_faces(), {"peak_pull_n"}).front();
        REQUIRE(local.strokes.size() == 2);
        const bool first_is_harder = local.strokes[0].name == "peak_pull_from_closed_n";
        CHECK(first_is_harder == (by_mm > 0.0));
    }
}

TEST_CASE("strokes too far apart to change places do not compete", "[tolerance]") {
    const auto local = local_spreads(
        designs::heron(), {{.key = "tang.half_stop", .kind = SpreadKind::uniform, .size = 1e-4}},
        {"peak_pull_n", "reading_loaded_closed_mm"});
    CHECK(local[0].strokes.empty());
    CHECK(local[1].strokes.empty());
}
