#pragma once

#include <algorithm>
#include <cmath>

#include "backspring/grind/grind.hpp"

namespace backspring::detail {

/// Stations at equal distances, each with what tapers off to its neighbours.
class Stations {
  public:
    Stations(double from_mm, double to_mm, double spacing_mm)
        : from_(from_mm),
          parts_(std::max(1, static_cast<int>(std::ceil((to_mm - from_mm) / spacing_mm - 1e-9)))),
          apart_((to_mm - from_mm) / parts_) {}

    [[nodiscard]] Eigen::Index count() const { return parts_ + 1; }
    [[nodiscard]] double x_mm(Eigen::Index i) const {
        return from_ + apart_ * static_cast<double>(i);
    }

    /// Length a station stands for.
    [[nodiscard]] double length_mm(Eigen::Index i) const {
        return i == 0 || i == parts_ ? 0.5 * apart_ : apart_;
    }

    /// A depth of 1 at a station that tapers off to its neighbours.
    [[nodiscard]] Profile peak(Eigen::Index i) const {
        Profile removal;
        for (Eigen::Index k = std::max(i - 1, Eigen::Index{0}); k <= i + 1 && k <= parts_; ++k) {
            removal.push_back({x_mm(k), k == i ? 1.0 : 0.0});
        }
        return removal;
    }

    /// Shares what happens at a place out to the stations beside it; nothing off the ends.
    template <class Row>
    void add(Row row, double x, double amount) const {
        share_out(x, [&](Eigen::Index i, double share) { row[i] += share * amount; });
    }

    /// The shares that the stations beside a place have in it; none off the ends.
    ///
    /// @param add  of station and share
    template <class Add>
    void share_out(double x, Add add) const {
        const double place = (x - from_) / apart_;
        if (!(place >= 0.0 && place <= parts_)) return;
        const auto i = std::min(static_cast<Eigen::Index>(place), Eigen::Index{parts_ - 1});
        const double share = place - static_cast<double>(i);
        add(i, 1.0 - share);
        add(i + 1, share);
    }

  private:
    double from_;
    int parts_;
    double apart_;
};

/// From the rear pin, or the pad of a blade behind it, to the own pad.
[[nodiscard]] Stations make_stations(const Design& design, GrindFace face, double spacing_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
