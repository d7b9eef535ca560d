#pragma once

#include "backspring/design/verdict.hpp"

namespace backspring {

/// A margin with what is the same for all: limit over value.
[[nodiscard]] Margin make_margin(std::string name, double value, double limit, std::string unit);

/// A number for a sentence, to three digits.
[[nodiscard]] std::string digits(double value);

/// A length for a sentence, to a thousandth of a millimetre.
[[nodiscard]] std::string millimetres(double value_mm);

/// Yield and set.
void judge_bending(std::vector<Margin>& margins, const Design& design, const Worked& worked);

/// Local stress at the middle pin's hole and at kinks of the belly.
void judge_local(std::vector<Margin>& margins, const Design& design, const Worked& worked);

/// Fatigue and the spring trade's own limits.
void judge_life(std::vector<Margin>& margins, const Design& design, const Worked& worked);

/// Pressure on the pad, galling, pins and liners.
void judge_wear(std::vector<Margin>& margins, const Design& design, const Worked& worked);

/// The edge's rap on closing.
void judge_rap(std::vector<Margin>& margins, const Design& design, const Worked& worked);

}  // namespace backspring
