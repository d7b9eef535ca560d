#pragma once

#include <span>
#include <vector>

#include "backspring/action/sweep.hpp"
#include "backspring/core/function_ref.hpp"

namespace backspring {

/// A number taken of a turn, borrowed for the length of a call.
using TurnValue = BorrowedFunction<const Turn&>;

/// Turns from one angle to another between which everything is smooth, at Chebyshev's places.
using Piece = std::span<const Turn* const>;

/// The blade angle of a turn [deg].
[[nodiscard]] inline double angle_of(const Turn* turn) { return turn->contact.blade_angle_deg; }

/// A blade's way over a range of angles, at as many turns as tell all that lies between.
///
/// It is cut at given angles and wherever another part of the tang, or an edge of the pad, comes to
/// bear: torque has its kinks and cusps there. A piece begins and ends beside its cuts and is told
/// by turns at Chebyshev's places: as many, or in as many pieces, as make torque add up to the
/// energy between any two of them. The identity torque = dU/dtheta finds what a look was too coarse
/// for.
class Turns {
  public:
    /// @param action     outlives this
    /// @param marks_deg  rising angles at which it begins, is cut, and ends; at least two
    Turns(const Action& action, const std::vector<double>& marks_deg);
    /// @param marks  contacts at those angles
    Turns(const Action& action, std::vector<Contact> marks);
    Turns(const Turns&) = delete;
    Turns& operator=(const Turns&) = delete;
    Turns(Turns&&) = default;
    Turns& operator=(Turns&&) = default;
    ~Turns() = default;

    [[nodiscard]] const Action& action() const { return *action_; }
    [[nodiscard]] std::span<const Piece> pieces() const { return pieces_; }

    /// The pieces between two marks.
    [[nodiscard]] std::span<const Piece> pieces(double from_deg, double to_deg) const;

    /// The turns of all pieces.
    [[nodiscard]] std::span<const Turn* const> all() const { return order_; }

  private:
    const Action* action_;
    std::vector<Turn> known_;
    std::vector<const Turn*> order_;
    std::vector<Piece> pieces_;
};

/// How large a value becomes, and where.
struct Peak {
    double value = 0.0;
    double blade_angle_deg = 0.0;  ///< [deg]
};

/// The turn where a value is largest, between the turns of the pieces too, to rounding error.
[[nodiscard]] Turn largest(const Action& action,
                           std::span<const Piece> pieces,
                           const TurnValue& value);

/// Over a whole travel.
[[nodiscard]] Turn largest(const Turns& travel, const TurnValue& value);

/// The turn with the largest bending stress anywhere along the spring.
///
/// Places of the spring that come nearly as high are looked at by themselves: the stress at one is
/// smooth, and the worst of several is not.
[[nodiscard]] Turn most_stressed(const Action& action, std::span<const Piece> pieces);

/// The turn where a value vanishes between two neighbouring turns at which it has opposite signs,
/// or 0 at the first.
///
/// @param i  the first of both, of the piece
[[nodiscard]] Turn zero_between(const Action& action,
                                const Piece& piece,
                                std::size_t i,
                                const TurnValue& value);

/// Integral of a value along pieces by the angle in radians, added up once for all their turns.
class TurnIntegral {
  public:
    /// @param pieces  outlive this
    TurnIntegral(std::span<const Piece> pieces, const TurnValue& value);

    /// From one angle within the pieces to another.
    [[nodiscard]] double between(double from_deg, double to_deg) const {
        return upto(to_deg) - upto(from_deg);
    }

  private:
    [[nodiscard]] double upto(double angle_deg) const;

    std::span<const Piece> pieces_;
    std::vector<double> values_, upto_;  ///< of every turn, piece after piece
};

}  // namespace backspring
