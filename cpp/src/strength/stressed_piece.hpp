#pragma once

#include <algorithm>
#include <array>
#include <vector>

#include "backspring/action/turns.hpp"
#include "backspring/strength/plastic_spring.hpp"

namespace backspring::detail {

/// Forces on the spring at a blade angle, and the set with which they were found.
struct SeenForces {
    double angle_deg;
    Loads loads;
    FaceShift set{};
};

/// Forces along a piece of a travel, between its turns by a curve through the nearest.
class StressedPiece {
  public:
    explicit StressedPiece(std::vector<SeenForces> seen) : seen_(std::move(seen)) {}

    [[nodiscard]] std::span<SeenForces> seen() { return seen_; }
    [[nodiscard]] std::span<const SeenForces> seen() const { return seen_; }

    /// Takes in another angle; one that lies close is replaced.
    void take_in(const SeenForces& seen);

    /// The first of the two turns that enclose an angle, which is no less than the first turn's.
    [[nodiscard]] std::size_t before(double angle_deg) const;

    /// At any angle from the first turn to the last, by so many turns on either side.
    [[nodiscard]] Loads at(double angle_deg, std::size_t on_each_side = 2) const;

    /// About where something is largest from one angle to another: by the turns, and by what lies
    /// between those beside the largest.
    template <class Value>
    [[nodiscard]] double top_deg(double from_deg, double to_deg, Value value_of) const {
        constexpr std::size_t parts = 8;
        const std::size_t first = before(from_deg);
        const std::size_t last = std::min(before(to_deg) + 1, seen_.size() - 1);
        const auto here = [&](std::size_t i) { return value_of(seen_[i].loads); };
        std::size_t best = first;
        double most = here(first);
        for (std::size_t i = first + 1; i <= last; ++i) {
            if (const double value = here(i); value > most) most = value, best = i;
        }
        const double from = seen_[std::max(best, first + 1) - 1].angle_deg;
        const double way = (seen_[std::min(best + 1, last)].angle_deg - from) / parts;
        std::array<double, parts + 1> values;
        for (std::size_t i = 0; i <= parts; ++i) {
            values[i] = value_of(at(from + static_cast<double>(i) * way));
        }
        const auto top =
            static_cast<std::size_t>(std::ranges::max_element(values) - values.begin());
        double place = static_cast<double>(top);
        if (top > 0 && top < parts) {
            const double a = values[top - 1], b = values[top], c = values[top + 1];
            if (a + c < 2.0 * b) place += 0.5 * (a - c) / (a - 2.0 * b + c);
        }
        return from + place * way;
    }

  private:
    std::vector<SeenForces> seen_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
