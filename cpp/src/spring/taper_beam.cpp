#include "taper_beam.hpp"

#include <algorithm>
#include <cmath>

#include "taper_series.hpp"

namespace backspring {
namespace {

// Coefficients of int_0^1 (1 - u)^2 / (1 + z u)^3 du = sum (-z)^j / (j + 3).
constexpr Series kFromEnd = [] {
    Series c{};
    for (int j = 0; j < kTerms; ++j) c[static_cast<std::size_t>(j)] = 1.0 / (j + 3.0);
    return c;
}();

/// int_0^1 (1 - u)^2 / (1 + z u)^3 du = (ln(1 + z) - z + z^2/2)/z^3.
double from_end(double z) {
    if (std::abs(z) < kSmallTaper) return sum_of(kFromEnd, z);
    return (std::log1p(z) - z + 0.5 * z * z) / (z * z * z);
}

/// A stretch of one width without a hole as a beam built in at its start.
class TaperBeam {
  public:
    TaperBeam(const Stretch& stretch, double bending_factor, double shear_factor)
        : t0_(stretch.thickness_mm),
          per_t0_(1.0 / t0_),
          taper_(stretch.taper),
          bending_(bending_factor),
          shear_(shear_factor) {
        if (stretch.cosine == 1.0 && stretch.width_share == 1.0) return;
        const double c = stretch.cosine * stretch.cosine;
        bending_ /= stretch.width_share * c * c;
        shear_ *= (1.0 + stretch.axial_share) / stretch.width_share;
    }

    /// By how much of its first thickness it grows over a way.
    [[nodiscard]] double z_at(double h) const { return taper_ * (h * per_t0_); }

    struct Own {
        double mm_per_n, rad_per_n, rad_per_nmm;
    };

    /// What a unit force does at its own place.
    ///
    /// @param bent  from_end(z_at(h))
    [[nodiscard]] Own own(double h, double bent) const {
        const double u = h * per_t0_, z = taper_ * u, per_t1 = 1.0 / (t0_ + taper_ * h);
        const double log_ratio = 1.0 + z * (z * bent - 0.5);
        const double half_slope = 0.5 * shear_ * per_t1;
        return {bending_ * u * u * u * bent + shear_ * u * log_ratio,
                0.5 * bending_ * u * u * per_t1 + half_slope,
                0.5 * bending_ * u * per_t1 * (per_t0_ + per_t1) - half_slope * taper_ * per_t1};
    }

  private:
    double t0_, per_t0_, taper_, bending_, shear_;
};

}  // namespace

OwnCompliance detail::own_of_taper(const Stretch& stretch,
                                   double x_mm,
                                   double bending_factor,
                                   double shear_factor) {
    const TaperBeam beam(stretch, bending_factor, shear_factor);
    const double h = x_mm - stretch.start_mm;
    const auto [mm_per_n, rad_per_n, rad_per_nmm] = beam.own(h, from_end(beam.z_at(h)));
    return {mm_per_n, rad_per_n, rad_per_nmm, stretch.start_mm, stretch.end_mm};
}

bool detail::owns_of_taper(const Stretch& stretch,
                           std::span<const double> x_mm,
                           double bending_factor,
                           double shear_factor,
                           OwnCompliances& own) {
    const TaperBeam beam(stretch, bending_factor, shear_factor);
    OwnCompliances::Numbers h, z;
    double steepest = 0.0;
    for (std::size_t i = 0; i < x_mm.size(); ++i) {
        h[i] = x_mm[i] - stretch.start_mm;
        z[i] = beam.z_at(h[i]);
        steepest = std::max(steepest, std::abs(z[i]));
    }
    if (!(steepest < kSmallTaper)) return false;
    for (std::size_t i = 0; i < x_mm.size(); ++i) {
        const auto [mm, rad, rate] = beam.own(h[i], first_terms<kTerms>(kFromEnd, z[i]));
        own.mm_per_n[i] = mm, own.rad_per_n[i] = rad, own.rad_per_nmm[i] = rate;
    }
    own.from_mm = stretch.start_mm, own.to_mm = stretch.end_mm;
    return true;
}

}  // namespace backspring
