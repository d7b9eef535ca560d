#pragma once

#include <array>
#include <cstddef>

namespace backspring {

/// The polynomial through a few points of a smooth function, in Newton's form.
class Interpolant {
  public:
    static constexpr std::size_t kMostPoints = 10;

    struct Jet {
        double value = 0.0;
        double slope = 0.0;
        double curvature = 0.0;
    };

    [[nodiscard]] bool full() const { return count_ == kMostPoints; }

    /// Takes in one more point, at a place of its own.
    ///
    /// @source I. Newton, divided differences
    void add(double x, double y);

    /// Value and derivatives at a place.
    [[nodiscard]] Jet at(double x) const;

    [[nodiscard]] double value_at(double x) const;

  private:
    std::array<double, kMostPoints> x_{}, coefficient_{}, last_{};
    std::size_t count_ = 0;
};

}  // namespace backspring
