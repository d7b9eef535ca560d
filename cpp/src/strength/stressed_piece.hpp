#pragma once

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

  private:
    std::vector<SeenForces> seen_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
