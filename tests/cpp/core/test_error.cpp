#include "backspring/core/error.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("a message names key and rule, one line a fault", "[core][closed form]") {
    const InvalidInput error({{"spring.width", "must be greater than 0 mm, got -1 mm"},
                              {"tang.open", "must be at most 500 mm, got 900 mm"}});
    CHECK(std::string(error.what()) ==
          "spring.width: must be greater than 0 mm, got -1 mm\n"
          "tang.open: must be at most 500 mm, got 900 mm");
}

TEST_CASE("every error can be caught as the library's own", "[core][property]") {
    CHECK_THROWS_AS(throw InvalidInput(std::vector<Fault>{{"a", "b"}}), Error);
    CHECK_THROWS_AS(throw OutOfRange("a"), Error);
    CHECK_THROWS_AS(throw NoConvergence("a"), Error);
}

TEST_CASE("an error keeps its faults after it is copied", "[core][property]") {
    const InvalidInput error(std::vector<Fault>{{"a", "b"}});
    const InvalidInput copy = error;
    REQUIRE(copy.faults().size() == 1);
    CHECK(copy.faults()[0].key == "a");
    CHECK(std::string(copy.what()) == "a: b");
}
