#pragma once

#include <functional>
#include <vector>

#include "backspring/action/sweep.hpp"

namespace backspring {

/// A blade's turn at any angle.
using TurnAt = std::function<Turn(double blade_angle_deg)>;

/// A number taken of a turn.
using TurnValue = std::function<double(const Turn&)>;

/// Turns of a blade at rising angles, each worked out when first asked for.
class Turns {
  public:
    /// Equal angles from one angle to open, both included; the last step may be shorter.
    ///
    /// @param pad  whose edges may take the tang, see bearing_kind()
    Turns(TurnAt turn_at, const Pad& pad, double from_deg, double step_deg);

    /// Turns that are known already, at least two.
    Turns(TurnAt turn_at, std::vector<Turn> known);

    /// The way between two rests, which are its first and last turn; the others are the whole's.
    ///
    /// @param whole  outlives the way
    Turns(Turns& whole, const Turn& from, const Turn& to);

    [[nodiscard]] int count() const { return static_cast<int>(turns_.size()); }
    [[nodiscard]] double angle_deg(int i) const { return angles_deg_[static_cast<std::size_t>(i)]; }
    [[nodiscard]] const Turn& operator[](int i);

    /// The turn at any other angle.
    [[nodiscard]] Turn at(double blade_angle_deg) const { return turn_at_(blade_angle_deg); }

    /// Which edges of the pad take the tang, if any: torque has its cusps where that changes.
    [[nodiscard]] int bearing_kind(int i);

    /// How many turns apart a first look may be: four degrees, or every turn where all are known.
    [[nodiscard]] int stride() const { return stride_; }

  private:
    TurnAt turn_at_;
    Pad pad_;
    std::vector<double> angles_deg_;
    std::vector<Turn> turns_;
    std::vector<bool> known_;
    int stride_ = 1;
    Turns* whole_ = nullptr;
    int first_ = 0;  ///< of the whole's turns strictly between the rests
};

/// Number of the turn where a value is largest, most turns never worked out.
///
/// Every fourth degree is tried. Then all are about each hill that comes within a tenth of the
/// highest, and where a narrower peak can hide: beside a rest, and near where the way of bearing
/// changes.
[[nodiscard]] int top_of(Turns& turns, const TurnValue& value);

/// The largest value near a turn: there, or at the best angle between its neighbours.
[[nodiscard]] Turn refined(Turns& turns, int i, const TurnValue& value);

/// The turn where a value is largest, searched between the turns to far below 0.01 deg.
[[nodiscard]] Turn largest(Turns& turns, const TurnValue& value);

}  // namespace backspring
