#pragma once

#include <optional>

#include "backspring/action/turns.hpp"

namespace backspring {

/// The way from one rest of a blade to the next, opening; each part is worked out when first asked
/// for.
class LazyStroke {
  public:
    /// @param travel  outlives this; both angles are marks of it
    LazyStroke(const Turns& travel, double from_deg, double to_deg)
        : action_(&travel.action()), pieces_(travel.pieces(from_deg, to_deg)) {}

    [[nodiscard]] const Turn& from() const { return *pieces_.front().front(); }
    [[nodiscard]] const Turn& to() const { return *pieces_.back().back(); }

    [[nodiscard]] std::span<const Piece> pieces() const { return pieces_; }

    /// Where the torque against opening is largest, friction included.
    [[nodiscard]] const Turn& opening_peak();

    /// Where the torque against closing is largest, friction included.
    [[nodiscard]] const Turn& closing_peak();

    /// Whether the torque changes sign on the way; if not, the spring has let go.
    [[nodiscard]] bool has_crest() { return crest().has_value(); }

    /// Where the torque changes sign: beyond it the blade snaps [deg]; nothing without a crest.
    [[nodiscard]] std::optional<double> crest_angle_deg() {
        return crest() ? std::optional(angle_of(&*crest())) : std::nullopt;
    }

    /// The turn there.
    [[nodiscard]] const std::optional<Turn>& crest();

    /// Energy that the crest releases less friction, from where the blade runs away; 0 where it
    /// does not [mJ].
    [[nodiscard]] double snap_energy_mj();

    /// Energy of the blade as it comes back to the way's start, let go where the spring takes over:
    /// strain energy from where the closing torque outdoes friction, less friction's work.
    ///
    /// @returns  [mJ]; 0 where friction holds the blade
    /// @note   a hand that goes on pushing adds to it
    [[nodiscard]] double closing_energy_mj();

    /// Where any number of a turn is largest on the way.
    [[nodiscard]] Turn peak_of(const TurnValue& value) const {
        return largest(*action_, pieces_, value);
    }

  private:
    std::optional<Turn> fall(const TurnValue& value) const;
    std::optional<Turn> takes_over(const Turn& crest) const;
    double friction_work_mj(const Turn& from, const Turn& to);

    const Action* action_;
    std::span<const Piece> pieces_;
    std::optional<Turn> opening_peak_, closing_peak_;
    std::optional<std::optional<Turn>> crest_;
    std::optional<TurnIntegral> friction_work_;
};

}  // namespace backspring
