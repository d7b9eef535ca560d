#include <set>

#include "backspring/core/error.hpp"
#include "backspring/core/notice.hpp"
#include "backspring/core/require.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("every code has a name of its own", "[core][property]") {
    std::set<std::string_view> names;
    for (const NoticeName& each : kNoticeNames) {
        CHECK(name_of(each.code) == each.name);
        names.insert(each.name);
    }
    CHECK(names.size() == kNoticeNames.size());
}

TEST_CASE("an error carries its notice and says it in short", "[core][property]") {
    const Notice notice{.code = NoticeCode::face_runs_out,
                        .parameters = {{"left", 0.25, Quantity::length}},
                        .names = {{"face", "kick"}}};
    const NoConvergence error(notice);
    CHECK(std::string(error.what()) == "face-runs-out: face kick, left 0.25 mm");
    REQUIRE(error.notice());
    CHECK(error.notice()->parameters[0].value == 0.25);
    CHECK_FALSE(NoConvergence("a text").notice());
}

TEST_CASE("each quantity has the core's unit", "[core][closed form]") {
    CHECK(unit_of(Quantity::length) == "mm");
    CHECK(unit_of(Quantity::stress) == "MPa");
    CHECK(unit_of(Quantity::temperature) == "C");
    CHECK(unit_of(Quantity::ratio).empty());
}

TEST_CASE("a broken rule goes on with its numbers in turn", "[core][property]") {
    Requirements rules;
    rules.in_range("spring.width", 60.0, 0.0, 50.0, "mm");
    REQUIRE(rules.faults().size() == 1);
    const Notice notice = broken_rule(NoticeCode::breaks_rule, rules.faults().front());
    CHECK(notice.names.at("key") == "spring.width");
    REQUIRE(notice.parameters.size() == 2);
    CHECK(notice.parameters[0].value == 50.0);
    CHECK(notice.parameters[1].value == 60.0);
    CHECK(notice.parameters[1].quantity == Quantity::length);
    CHECK(notice.parameters[0].name != notice.parameters[1].name);
}
