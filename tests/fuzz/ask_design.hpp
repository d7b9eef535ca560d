#pragma once

#include <cstdint>
#include <span>

// What the fuzzers and the tests that replay their corpus run: one input, one question.
namespace fuzz {

/// Makes a design of the bytes and asks it one question.
///
/// Every answer must be of numbers, and every refusal one of the library's own errors.
///
/// @throws WrongAnswer, or whatever else went wrong
void ask_design(std::span<const std::uint8_t> bytes);

/// The same of tables, texts and single numbers: what the core takes besides designs.
void ask_tables(std::span<const std::uint8_t> bytes);

/// What takes microseconds: small tables, and the rules of a design. One design of fifty is
/// checked.
void ask_short(std::span<const std::uint8_t> bytes);

}  // namespace fuzz
