#pragma once

// Catch2 in either of its two major versions; distributions still ship both.
#if __has_include(<catch2/catch_test_macros.hpp>)
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>
#include <catch2/generators/catch_generators_range.hpp>
#include <catch2/matchers/catch_matchers.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>
#else
#include <catch2/catch.hpp>
namespace Catch::Matchers {
inline auto ContainsSubstring(const std::string& text) { return Contains(text); }
}  // namespace Catch::Matchers
#endif

// Relative error that a sum of a few rounded terms may have.
inline constexpr double kRounding = 1e-13;

using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
