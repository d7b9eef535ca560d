#include "backspring/check/check.hpp"
#include "backspring/design/field.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

TEST_CASE("a design without a blade is refused by every question", "[design][abuse]") {
    Design design = designs::heron();
    design.blades.clear();
    REQUIRE(faults(design).size() == 1);
    CHECK(message(faults(design)[0]) == "must have at least one blade");
    CHECK_THROWS_WITH(check(design), "blades: must have at least one blade");
}

TEST_CASE("a key given too few or too many numbers is refused", "[design][abuse]") {
    const auto given = [](const char* key, std::vector<double> numbers) {
        return with_numbers(designs::heron(), {{key, std::move(numbers)}});
    };
    CHECK_THROWS_WITH(given("spring.pad", {27.0}), "spring.pad: cannot hold 1 numbers");
    CHECK_THROWS_WITH(given("spring.thickness", {0.0, 3.0, 5.0}),
                      "spring.thickness: cannot hold 3 numbers");
    CHECK_THROWS_WITH(given("fit.preload", {}), "fit.preload: cannot hold 0 numbers");
    CHECK_THROWS_WITH(given("spring.width", {}), "spring.width: cannot hold 0 numbers");
    CHECK(given("spring.pad", {26.0, 36.5}).own().pad.start_mm == 26.0);
}
