#pragma once

#include <array>
#include <optional>
#include <span>

#include "backspring/action/joint.hpp"
#include "coupled_ends.hpp"
#include "places.hpp"
#include "small_lu.hpp"

namespace backspring::detail {

/// A touch of any blade, at either end of the spring.
struct AnyTouch {
    const Indenter* indenter;
    Touch touch;
    bool far = false;
    bool held = false;  ///< at an edge of its pad, and would go on beyond it
    int seat = -1;      ///< of the blades that are free to seat, or none

    /// Of its force about its pivot [mm].
    [[nodiscard]] double lever_mm() const {
        return touch.x_mm - indenter->pivot_mm + touch.slope * touch.height_mm;
    }
};

/// Moves a touch as go_along() does, from where it bore before its outline was turned a little.
///
/// @returns  false where its part does not reach there any more
bool turn_along(AnyTouch& one, double by);

/// Forces that keep all touches of a spring in touch at both ends, and Newton's step towards the
/// places, and the angles of those free to seat, at which its energy is stationary.
///
/// Ends act on each other's forces by the moments that pass between the pins, which is one more
/// compliance, or by the turn on one pin, one more unknown.
class TouchesStep {
  public:
    static constexpr std::size_t kMostTouches = 8;
    static constexpr std::size_t kMostSeats = 7;
    static constexpr std::size_t kMost = kMostTouches + kMostSeats + 1;
    using Lu = SmallLu<kMost>;
    using Column = Lu::Column;
    using Table = Lu::Table;

    /// @param touches  outlive this; their forces and whether they are held are set
    TouchesStep(const Joint& joint, std::span<AnyTouch> touches, std::size_t seats);

    /// Whether any forces keep all touches in touch.
    [[nodiscard]] bool solved() const { return solved_; }

    /// Whether every touch pushes.
    [[nodiscard]] bool pushes() const;

    /// Turn of the own root by the spring's turn on its one pin.
    [[nodiscard]] double turn_rad() const { return turn_rad_; }

    /// Of the own end and the far one.
    [[nodiscard]] std::array<EndSums, 2> sums() const;

    /// Lift and turn of an end's root by the other end.
    [[nodiscard]] RootMove root_moved(bool far) const;

    /// Largest of all misses, slopes and levers as shares of forces and distances.
    [[nodiscard]] double worst() const;

    /// Change of slope on an arc, of station on a flat, at each touch, and of each seat's angle.
    [[nodiscard]] std::optional<Column> step();

    /// Whether torques drive all free blades back where they are turned off their seats.
    [[nodiscard]] bool seats_are_least();

  private:
    /// What an unknown does to a touch.
    struct Move {
        double along_mm = 0.0, out_mm = 0.0, slope = 0.0;
    };
    using Moves = std::array<Move, kMostTouches>;

    [[nodiscard]] const AnyTouch& at(std::size_t i) const { return touches_[i]; }
    [[nodiscard]] const Flexibility& flexibility(std::size_t i) const {
        return at(i).far ? joint_.far_end->flexibility : joint_.flexibility;
    }
    /// Way of the end as the spring turns: + own, - far, 0 where it does not.
    [[nodiscard]] double sense(std::size_t i) const {
        return turns_ ? at(i).far ? -1.0 : 1.0 : 0.0;
    }
    [[nodiscard]] Compliance between(std::size_t moves, std::size_t pressed) const;
    [[nodiscard]] double across_rate(std::size_t moves, std::size_t pressed) const;
    [[nodiscard]] double bend_rate(std::size_t moves, std::size_t pressed) const;
    [[nodiscard]] Move moved_along(std::size_t touch) const;
    [[nodiscard]] Move turned(std::size_t touch) const;
    [[nodiscard]] Column gains(const Moves& moves) const;

    void solve();
    void judge();
    void differentiate();
    void add_rates(const Moves& moves, std::size_t column);

    const Joint& joint_;
    std::span<AnyTouch> touches_;
    std::size_t n_, seats_;
    bool turns_;
    std::array<BeamPlace, kMostTouches> places_;
    std::array<PlaceRates, kMostTouches> place_rates_{};
    Table slopes_;  ///< of the face at one touch per force at another
    Lu give_;
    Column forces_{}, turned_{}, misses_{}, torques_{};
    double turn_rad_ = 0.0;
    bool solved_ = false;
    Table rates_;  ///< of misses times forces, and of torques
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
