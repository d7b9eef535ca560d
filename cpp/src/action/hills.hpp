#pragma once

#include <span>
#include <vector>

#include "backspring/action/turns.hpp"

namespace backspring::detail {

// A hill whose top comes so near to the highest is climbed.
inline constexpr double kWorthALook = 0.03;

/// The values of a piece's turns.
using Values = std::span<const double>;

/// A piece's turn that its neighbours do not pass.
struct Hill {
    const Piece* piece;
    Values values;
    std::size_t place;   ///< of the turn in it
    double rise = 0.0;   ///< about how far it goes on rising beside the turn
    double ahead = 0.0;  ///< about where it is highest, from the turn [deg]
    bool falls = false;  ///< an end from where it surely falls

    [[nodiscard]] const Turn* node() const { return (*piece)[place]; }
    [[nodiscard]] double value() const { return values[place]; }
    [[nodiscard]] double guess() const { return value() + rise; }
    [[nodiscard]] bool at_first() const { return place == 0; }
    [[nodiscard]] bool at_last() const { return place + 1 == piece->size(); }
    [[nodiscard]] double low_deg() const { return angle_of((*piece)[at_first() ? 0 : place - 1]); }
    [[nodiscard]] double high_deg() const {
        return angle_of((*piece)[at_last() ? place : place + 1]);
    }
};

/// Hills that may hold the largest value, the highest first.
///
/// @param values  of all turns, piece after piece; outlive what is returned
[[nodiscard]] std::vector<Hill> hills_of(std::span<const Piece> pieces, const Values& values);

/// Where a value is largest: by the curves through the pieces where these tell it to 1e-11 of it.
///
/// @param values  of all turns, piece after piece
[[nodiscard]] Peak peak_of(const Action& action,
                           std::span<const Piece> pieces,
                           const Values& values,
                           const TurnValue& value);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
