#include "ask_design.hpp"
#include "design_of_bytes.hpp"
#include "figures.hpp"
#include "questions.hpp"

using namespace backspring;

namespace fuzz {
namespace {

// One design of so many is asked what takes long, where it has one blade.
constexpr std::uint32_t kAsked = 50;

/// Fowler, Noll and Vo's sum: which inputs are asked more follows from nothing else of theirs.
std::uint32_t sum_of(std::span<const std::uint8_t> bytes) {
    std::uint32_t sum = 2166136261U;
    for (const std::uint8_t byte : bytes) sum = (sum ^ byte) * 16777619U;
    return sum ^ sum >> 15U;
}

/// The rules of any design hold or are told; one that keeps them holds numbers alone.
void judge_rules(const Design& design, bool asked) {
    const std::vector<Fault> told = faults(design);
    for (const Fault& fault : told) require(!fault.text.empty(), "a fault without words");
    if (!told.empty()) return;
    hold(design);
    if (asked && design.blades.size() == 1) hold(check(design));
}

/// What a rest takes, of a blade alone.
void judge_rests(const Design& design) {
    if (design.blades.size() != 1) return;
    Solution solution(design);
    hold(solution.readings());
}

}  // namespace

void ask_short(std::span<const std::uint8_t> input) {
    Bytes bytes(input);
    try {
        if (bytes.one_of(3) == 0) return ask_small_table(bytes);
        const Design design = design_of(bytes);
        const std::uint32_t sum = sum_of(input);
        judge_rules(design, sum % kAsked == 0);
        if (sum % kAsked < 5) judge_rests(design);
    } catch (const Error&) {
        // A refusal in the library's own words.
    }
}

}  // namespace fuzz
