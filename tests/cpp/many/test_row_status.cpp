#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "backspring/check/check.hpp"
#include "backspring/many/batch.hpp"
#include "backspring/tang/drawn_outline.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("every status of a row has a name of its own", "[batch]") {
    std::set<std::string> names;
    for (int i = 0; i <= static_cast<int>(RowStatus::not_run); ++i) {
        CHECK(names.insert(name_of(static_cast<RowStatus>(i))).second);
    }
    CHECK(name_of(RowStatus::ok) == "ok");
    CHECK(name_of(RowStatus::lifted_off) == "lifted_off");
    CHECK(name_of(RowStatus::not_run) == "not_run");
    CHECK_THROWS(name_of(static_cast<RowStatus>(99)));
}

namespace {

/// A drawn tang, its corners counterclockwise from the front of the open face.
RowStatus status_of(const std::vector<designs::Point>& corners) {
    Design design = designs::heron();
    std::vector<OutlinePoint> rows;
    for (const auto& [u, w] : corners) rows.push_back({u, w, 0.0});
    Tang tang;
    tang.pivot_mm = design.own().tang.pivot_mm;
    design.own().tang = tang_with_outline(tang, rows);
    REQUIRE(faults(design).empty());
    return check_many(design, {{"fit.preload", Eigen::ArrayXd::Constant(1, 0.9)}}).status.front();
}

}  // namespace

TEST_CASE("an open face that does not lie over the pivot holds no blade", "[batch][statics]") {
    // A face presses through the foot of the perpendicular from the pivot: where that is not on the
    // face, the spring turns the blade on.
    const designs::Point open_front{5.0, 4.5}, open_rear{-4.6, 4.5}, end{-4.6, -4.6};
    const designs::Point closed_front{9.0, -4.6};
    CHECK(status_of({open_front, open_rear, end, closed_front}) == RowStatus::ok);
    CHECK(status_of({open_front, {1.0, 4.5}, {-4.6, 1.0}, end, closed_front}) ==
          RowStatus::not_held_open);
}

TEST_CASE("of each stroke a row tells its own pull, stress and margin", "[batch][closed form]") {
    const Design design = designs::heron();
    const Check full = check(design);
    REQUIRE(full.strokes.size() == 2);
    double worst_mpa = 0.0;
    for (const StrokeReport& each : full.strokes) {
        CAPTURE(each.from_position);
        const std::string from = "_from_" + each.from_position;
        const Batch row =
            check_many(design, {{"fit.preload", Eigen::ArrayXd::Constant(1, 0.9)}},
                       {.threads = 1,
                        .chunk_rows = 1,
                        .columns = {"peak_pull" + from + "_n", "peak_torque" + from + "_nmm",
                                    "travel_peak_stress" + from + "_mpa", "yield_margin" + from}});
        const auto value = [&](std::size_t i) { return row.columns[i].values[0]; };
        CHECK_THAT(value(0), WithinRel(each.peak_pull_n.value(), 1e-9));
        CHECK_THAT(value(1), WithinRel(35.0 * value(0), 1e-12));
        CHECK_THAT(value(3), WithinRel(1300.0 / value(2), 1e-12));
        worst_mpa = std::max(worst_mpa, value(2));
    }
    CHECK_THAT(worst_mpa, WithinRel(full.travel.peak_stress_mpa, 1e-9));
}
