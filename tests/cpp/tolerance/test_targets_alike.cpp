#include <cmath>
#include <map>

#include "backspring/check/check.hpp"
#include "backspring/size/size.hpp"
#include "backspring/tolerance/tolerance.hpp"
#include "catch.hpp"
#include "several_blades.hpp"
#include "wild_changes.hpp"

using namespace backspring;

namespace {

constexpr int kRows = 60;

/// A design with every target about what it does, so that some knives miss each.
Design aimed(Design design, double pull_share) {
    design.strength.tensile_mpa = {.value = 1600.0, .low = 1550.0, .high = 1650.0};
    design.targets.openings = 1e5;
    const Check drawn = check(design);
    double pull = 0.0;
    for (const StrokeReport& each : drawn.strokes) pull = std::max(pull, *each.peak_pull_n);
    design.targets.pull_low_n = 0.9 * pull_share * pull;
    design.targets.pull_high_n = 1.1 * pull_share * pull;
    design.targets.yield_margin = *drawn.travel.yield_margin;
    design.targets.reading_mm = 0.12;
    return design;
}

/// The rows as a study with nothing to spread lays them out.
ToleranceRows plan_of(const std::vector<Change>& changes) {
    return {.sample = kRows, .second = 0, .changes = changes};
}

const TargetResult& target(const Check& check, const std::string& name) {
    const auto found = std::find_if(check.targets.begin(), check.targets.end(),
                                    [&](const TargetResult& each) { return each.name == name; });
    REQUIRE(found != check.targets.end());
    return *found;
}

}  // namespace

TEST_CASE("check, many designs and tolerance judge every target alike", "[targets][property]") {
    unsigned start = 40;
    std::map<std::string, int> met, missed;
    for (const auto& [name, drawn] : designs::all()) {
        const Design design = aimed(drawn, start % 2 ? 1.0 : 0.8);
        const auto changes = designs::wild_changes(design, start++, kRows);
        const Batch batch =
            check_many(design, changes,
                       {.threads = 1, .chunk_rows = 256, .columns = tolerance_columns(design)});
        const Spread spread{.key = "fit.preload", .kind = SpreadKind::normal, .size = 0.01};
        const Tolerance study = sum_up(design, {spread}, plan_of(changes), batch, 1);
        REQUIRE(study.targets.size() == 4);
        std::map<std::string, std::int64_t> wanted;
        std::int64_t good = 0;
        for (Eigen::Index row = 0; row < kRows; ++row) {
            if (batch.status[static_cast<std::size_t>(row)] != RowStatus::ok) continue;
            const Check full = check(designs::row_of(design, changes, row));
            bool all = true;
            for (const TargetResult& each : full.targets) {
                wanted[each.name] += each.met;
                (each.met ? met : missed)[each.name] += 1;
                all = all && each.met;
            }
            good += all;
        }
        for (const TargetShare& each : study.targets) {
            CAPTURE(name, each.name);
            CHECK(each.met == wanted[each.name]);
        }
        CHECK(study.good == good);
    }
    for (const char* each : {"pull", "yield_margin", "reading", "openings"}) {
        CAPTURE(each);
        CHECK(met[each] > 5);
        CHECK(missed[each] > 5);
    }
}

TEST_CASE("a tolerance study judges the worst of all cases, as a check does", "[targets][blades]") {
    Design design = designs::bunting(backspring::SupportKind::two_pins);
    std::vector<double> pulls;
    for (const Beside& row : check(design).beside) {
        double pull = 0.0;
        for (const StrokeReport& each : row.strokes) pull = std::max(pull, *each.peak_pull_n);
        pulls.push_back(pull);
    }
    design.targets.pull_low_n = std::min(pulls[0], pulls[1]);
    design.targets.reading_mm = 0.12;
    const Eigen::ArrayXd preloads = Eigen::ArrayXd::LinSpaced(kRows, 0.85, 0.95);
    const std::vector<Change> changes{{"fit.preload", preloads}};
    const Batch batch = check_many(
        design, changes, {.threads = 1, .chunk_rows = 256, .columns = tolerance_columns(design)});
    const Spread spread{.key = "fit.preload", .kind = SpreadKind::normal, .size = 0.01};
    const Tolerance study = sum_up(design, {spread}, plan_of(changes), batch, 1);
    std::map<std::string, std::int64_t> wanted;
    for (const double preload : preloads) {
        const Check full = check(with_dimension(design, "fit.preload", preload));
        for (const TargetResult& each : full.targets) wanted[each.name] += each.met;
    }
    REQUIRE(study.working == kRows);
    for (const TargetShare& each : study.targets) {
        CAPTURE(each.name);
        CHECK(each.met == wanted[each.name]);
    }
    CHECK(wanted["pull"] > 5);
    CHECK(wanted["pull"] < kRows - 5);
}

TEST_CASE("a life is counted in a tolerance study", "[targets]") {
    Design design = designs::heron();
    design.strength.tensile_mpa = {.value = 1600.0, .low = 1550.0, .high = 1650.0};
    const std::vector<Spread> spreads{
        {.key = "fit.preload", .kind = SpreadKind::normal, .size = 0.05}};
    // The life that is just had as drawn: half of the knives stand above it.
    double least = 1.0, most = 9.0;
    for (int round = 0; round < 40; ++round) {
        const double power = 0.5 * (least + most);
        design.targets.openings = std::pow(10.0, power);
        const bool lasts = *target(check(design), "openings").value > 1.0;
        (lasts ? least : most) = power;
    }
    CAPTURE(*design.targets.openings);
    REQUIRE(least > 1.0);
    REQUIRE(most < 9.0);
    const Tolerance study = tolerance(
        design, spreads, {.rows = 256, .seed = 1, .pieces = 1, .with_shares = false, .threads = 1});
    REQUIRE(study.targets.size() == 2);
    CHECK(study.targets[0].name == "yield_margin");
    CHECK_FALSE(study.targets[0].stated);
    CHECK(study.targets[1].name == "openings");
    CHECK(study.targets[1].met > 64);
    CHECK(study.targets[1].met < 192);
    for (const ResultSpread& each : study.results) CHECK(each.local.name != "openings_margin");
}

TEST_CASE("a design sized for a margin meets that margin when it is checked", "[targets][size]") {
    const Design design = designs::heron();
    const double drawn = *check(design).travel.yield_margin;
    for (const double share : {0.9, 1.0, 1.05}) {
        const double margin = share * drawn;
        const SizeResult sized = size(design, {.pull_n = std::nullopt, .yield_margin = margin},
                                      {{.key = "fit.preload",
                                        .station_mm = {},
                                        .low_mm = {},
                                        .high_mm = {},
                                        .stock_mm = {}}});
        REQUIRE_FALSE(sized.answers.empty());
        for (const SizeAnswer& answer : sized.answers) {
            Design made = answer.design;
            made.targets.yield_margin = margin;
            CHECK(target(check(made), "yield_margin").met);
        }
    }
}

TEST_CASE("a blade that does not stay in its positions has no reading to judge", "[targets]") {
    Design design = designs::heron();
    design.targets.reading_mm = 10.0;
    CHECK(target(check(design), "reading").met);
    CHECK_FALSE(farthest_from_flush_mm({.closed_mm = 0.1, .half_stop_mm = {}}, true));
    CHECK(farthest_from_flush_mm({.closed_mm = 0.1, .half_stop_mm = {}}, false) == 0.1);
    CHECK(farthest_from_flush_mm({.closed_mm = 0.1, .half_stop_mm = -0.2}, true) == 0.2);
}

TEST_CASE("a limit is met but for rounding, and never without a value", "[targets]") {
    CHECK(is_within(1.2 - 1e-12, 1.2, std::nullopt));
    CHECK_FALSE(is_within(1.2 - 1e-6, 1.2, std::nullopt));
    CHECK(is_within(3.0 + 1e-12, std::nullopt, 3.0));
    CHECK_FALSE(is_within(3.1, std::nullopt, 3.0));
    CHECK_FALSE(is_within(std::nullopt, std::nullopt, 3.0));
    CHECK_FALSE(is_within(std::nan(""), 1.0, 3.0));
}
