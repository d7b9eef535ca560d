#include "backspring/check/verdict.hpp"

#include <algorithm>
#include <cstdio>
#include <limits>

#include "verdict_parts.hpp"

namespace backspring {
namespace {

double rank(const Margin& margin) {
    return margin.margin.value_or(std::numeric_limits<double>::infinity());
}

}  // namespace

Margin make_margin(std::string name, double value, double limit, std::string unit) {
    Margin margin;
    margin.name = std::move(name);
    margin.value = value;
    margin.limit = limit;
    margin.unit = std::move(unit);
    if (value > 0.0) margin.margin = limit / value;
    return margin;
}

std::string digits(double value) {
    char text[32];
    std::snprintf(text, sizeof text, value >= 100.0 ? "%.0f" : "%.3g", value);
    return text;
}

std::string millimetres(double value_mm) {
    char text[32];
    std::snprintf(text, sizeof text, "%.3f mm", value_mm);
    return text;
}

std::vector<Margin> verdict(const Design& design, const Worked& worked) {
    std::vector<Margin> margins;
    judge_bending(margins, design, worked);
    const std::vector<Notch> notches = find_notches(design, worked);
    judge_local(margins, design, worked, notches);
    judge_life(margins, design, worked, notches);
    judge_wear(margins, design, worked);
    judge_rap(margins, design, worked);
    std::stable_sort(margins.begin(), margins.end(),
                     [](const Margin& a, const Margin& b) { return rank(a) < rank(b); });
    return margins;
}

}  // namespace backspring
