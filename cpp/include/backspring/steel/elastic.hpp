#pragma once

namespace backspring {

/// Shear factor of a rectangle in Timoshenko's beam.
///
/// @source timoshenko-beam
inline constexpr double kShearFactor = 5.0 / 6.0;

/// What the steel does below its elastic limit.
struct Elastic {
    double youngs_modulus_mpa = 205000.0;  ///< Young's modulus [MPa]
    double poisson = 0.29;                 ///< Poisson's ratio
};

/// Shear modulus, G = E / (2 (1 + nu)).
///
/// @returns  [MPa]
[[nodiscard]] constexpr double shear_modulus_mpa(const Elastic& elastic) {
    return elastic.youngs_modulus_mpa / (2.0 * (1.0 + elastic.poisson));
}

}  // namespace backspring
