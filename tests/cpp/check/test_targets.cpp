#include <algorithm>
#include <map>
#include <string>

#include "backspring/check/check.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

TargetResult target(const Check& check, const std::string& name) {
    const auto found = std::find_if(check.targets.begin(), check.targets.end(),
                                    [&](const TargetResult& t) { return t.name == name; });
    REQUIRE(found != check.targets.end());
    return *found;
}

/// Names of the notice on a target that cannot be judged; none where there is no such notice.
std::map<std::string, std::string> unknown(const Check& check) {
    for (const Notice& notice : check.notices) {
        if (notice.code == NoticeCode::target_unknown) return notice.names;
    }
    return {};
}

}  // namespace

TEST_CASE("a life asked of a steel without tensile strength is missed and told",
          "[design][property]") {
    Design design = designs::heron();
    REQUIRE(design.strength.tensile_mpa.value == 0.0);
    design.targets.openings = 20000.0;
    const Check bare = check(design);
    CHECK_FALSE(target(bare, "openings").value);
    CHECK_FALSE(target(bare, "openings").met);
    CHECK(unknown(bare).at("target") == "openings");
    CHECK(unknown(bare).at("missing") == "tensile");

    design.strength.tensile_mpa = {.value = 1600.0, .low = 1550.0, .high = 1650.0};
    const Check given = check(design);
    CHECK(target(given, "openings").value > 0.0);
    CHECK(unknown(given).empty());
}

TEST_CASE("a pull without a nail nick is missed and told", "[design][property]") {
    Design design = designs::heron();
    design.own().blade.nail_nick_mm.reset();
    design.targets.pull_low_n = 1.0;
    const Check result = check(design);
    CHECK_FALSE(target(result, "pull").met);
    CHECK(unknown(result).at("target") == "pull");
    CHECK(unknown(result).at("missing") == "nail-nick");
}

TEST_CASE("a spring that bears nothing meets no target it cannot show", "[design][property]") {
    Design design = designs::heron();
    // A face so far out that no tang reaches it: the fit leaves a gap all the way.
    design.own().fit.preload_mm = 0.0;
    design.own().tang.half_stop_mm = 3.0;
    design.own().tang.closed_mm = 3.0;
    design.targets.pull_high_n = 50.0;
    design.targets.yield_margin = 1.0;
    design.targets.openings = 1000.0;
    design.strength.tensile_mpa = {.value = 1600.0, .low = 1550.0, .high = 1650.0};
    const Check result = check(design);
    CHECK(result.targets.size() == 3);
    for (const TargetResult& each : result.targets) {
        CAPTURE(each.name);
        CHECK((each.value.has_value() || !each.met));
    }
}

TEST_CASE("without a stated yield margin 1 at the likely strength is judged",
          "[design][property]") {
    Design design = designs::heron();
    design.targets = {};
    const double stress = check(design).travel.peak_stress_mpa;
    // The lower limit of the strength does not count: only the likely one is judged.
    design.strength.yield_mpa = {.value = 1.001 * stress, .low = 0.9 * stress, .high = 2 * stress};
    CHECK(target(check(design), "yield_margin").met);
    design.strength.yield_mpa.value = 0.999 * stress;
    CHECK_FALSE(target(check(design), "yield_margin").met);
    CHECK_FALSE(target(check(design), "yield_margin").stated);
    design.targets.yield_margin = 0.9;
    CHECK(target(check(design), "yield_margin").met);
    CHECK(target(check(design), "yield_margin").stated);
}

TEST_CASE("a spring without stress keeps the unstated margin and loses a stated one",
          "[design][property]") {
    CHECK(judge_targets({}, {}).front().met);
    Targets stated;
    stated.yield_margin = 1.0;
    CHECK_FALSE(judge_targets(stated, {}).front().met);
}
