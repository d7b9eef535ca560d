#pragma once

#include <Eigen/Core>
#include <optional>
#include <unsupported/Eigen/AutoDiff>
#include <vector>

#include "elements.hpp"

namespace backspring::detail {

/// A number that knows its derivatives by the unknowns and the elements.
using Real = Eigen::AutoDiffScalar<Eigen::Matrix<double, element::count, 1>>;

/// Integrals up to a station that may move, and what shear adds to the slope behind a force there.
struct Upto {
    Real a0, a1, a2, shear, local_shear;
};

/// A touch with its derivatives.
struct Bearing {
    Real x, height, slope, overlap, force;
    Upto upto;
    Real miss;      ///< 0 where the touch is in its place
    Real off_line;  ///< 0 where a rigid spring lies on it
};

/// The equations of one contact, written once more in numbers that know their derivatives.
class Equations {
  public:
    /// All three are looked at later too and must outlive this.
    Equations(const Joint& joint, const Elements& elements, const State& state);

    [[nodiscard]] const std::vector<Bearing>& bearings() const { return bearings_; }

    [[nodiscard]] Real torque() const;
    [[nodiscard]] Real friction() const;
    [[nodiscard]] Real dial_deflection() const;
    [[nodiscard]] Real moment(double x_mm) const;

  private:
    [[nodiscard]] Real at(int number) const { return {elements_[number], element::count, number}; }
    [[nodiscard]] Upto read(const Real& x, double x_mm, const Rates& rates, int first) const;
    [[nodiscard]] Bearing place(int k, const Bearer& bearer, const Touch& touch) const;
    [[nodiscard]] Real compliance_of(const Real& x, const Real& xi, const Upto& nearer) const;
    [[nodiscard]] Real slope_at(std::size_t k) const;
    void share_force();
    void lie_on_both(const State& state);
    void settle(std::size_t k, Hold hold, const Real& face_slope);

    const Joint& joint_;
    const Elements& elements_;
    Real root_;
    Real turn_;
    std::optional<Real> lean_;
    std::vector<Bearing> bearings_;
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
