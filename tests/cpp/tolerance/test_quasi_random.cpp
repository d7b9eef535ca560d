#include <cmath>
#include <set>

#include "backspring/core/error.hpp"
#include "backspring/tolerance/quasi_random.hpp"
#include "catch.hpp"

using namespace backspring;

TEST_CASE("the first points of the sequence are the known ones", "[quasi_random]") {
    // Dimension 0 is van der Corput's sequence: the index's digits mirrored at the point.
    for (const auto& [index, value] : {std::pair{1u, 0.5}, {2u, 0.25}, {3u, 0.75}, {4u, 0.125}}) {
        CHECK(sobol_bits(index, 0) * 0x1p-32 == value);
    }
    CHECK(sobol_bits(0, 5) == 0);
}

TEST_CASE("each dimension has one point in each of 2^m equal parts, for any seed",
          "[quasi_random]") {
    constexpr std::uint32_t count = 256;
    const std::uint32_t seed = GENERATE(0u, 1u, 77u, 4294967295u);
    for (int dimension = 0; dimension < kMostQuasiDimensions; ++dimension) {
        std::set<int> parts;
        for (std::uint32_t i = 0; i < count; ++i) {
            const double u = quasi_random(i, dimension, seed);
            REQUIRE(u > 0.0);
            REQUIRE(u < 1.0);
            parts.insert(static_cast<int>(u * count));
        }
        CHECK(parts.size() == count);
    }
}

TEST_CASE("scrambling keeps the evenness of two dimensions together", "[quasi_random]") {
    // The first two dimensions are a (0, m, 2)-net: one point in each box of area 2^-m, whatever
    // its shape (Sobol, 1967).
    constexpr int m = 8;
    for (int across = 0; across <= m; ++across) {
        std::set<std::pair<int, int>> boxes;
        for (std::uint32_t i = 0; i < (1u << m); ++i) {
            const double u = quasi_random(i, 0, 3), v = quasi_random(i, 1, 3);
            boxes.insert({static_cast<int>(std::ldexp(u, across)),
                          static_cast<int>(std::ldexp(v, m - across))});
        }
        CHECK(boxes.size() == (1u << m));
    }
}

TEST_CASE("seeds and dimensions give points of their own", "[quasi_random]") {
    std::set<double> seen;
    for (std::uint32_t seed = 0; seed < 50; ++seed) {
        for (int dimension = 0; dimension < 10; ++dimension) {
            seen.insert(quasi_random(1, dimension, seed));
        }
    }
    CHECK(seen.size() == 500);
}

TEST_CASE("a dimension without directions is refused", "[quasi_random]") {
    CHECK_THROWS_WITH(sobol_bits(1, 48), "dimension: must be from 0 to 47, got 48");
    CHECK_THROWS_AS(sobol_bits(1, -1), OutOfRange);
}
