#pragma once

#include <Eigen/Dense>
#include <array>
#include <optional>
#include <span>
#include <vector>

#include "backspring/action/joint.hpp"
#include "coupled_ends.hpp"

namespace backspring::detail {

/// A touch of any blade, at either end of the spring.
struct AnyTouch {
    const Indenter* indenter;
    Touch touch;
    bool far = false;
    bool held = false;  ///< at an edge of its pad, and would go on beyond it
    int seat = -1;      ///< of the blades that are free to seat, or none

    /// Its lever about its pivot, of its force [mm].
    [[nodiscard]] double lever_mm() const {
        return touch.x_mm - indenter->pivot_mm + touch.slope * touch.height_mm;
    }
};

/// Forces that keep all touches of a spring in touch at both ends, and Newton's step towards the
/// places, and the angles of those free to seat, at which its energy is stationary.
///
/// Ends act on each other's forces by the moments that pass between the pins, which is one more
/// compliance, or by the turn on one pin, one more unknown.
class TouchesStep {
  public:
    static constexpr int kMostTouches = 8;
    static constexpr int kMostSeats = 7;
    static constexpr int kMost = kMostTouches + kMostSeats + 1;
    using Column = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kMost, 1>;
    using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, kMost, kMost>;

    /// @param touches  outlive this; their forces and whether they are held are set
    TouchesStep(const Joint& joint, std::span<AnyTouch> touches, int seats);

    /// Turn of the own root by the spring's turn on its one pin.
    [[nodiscard]] double turn_rad() const { return turn_rad_; }

    /// Of the own end and the far one.
    [[nodiscard]] std::array<EndSums, 2> sums() const;

    /// How far an end's root is turned by the other end.
    [[nodiscard]] double root_turn_rad(bool far) const;

    /// Largest of all misses, slopes and levers as shares of forces and distances.
    [[nodiscard]] double worst() const;

    /// Change of slope on an arc, of station on a flat, at each touch, and of each seat's angle.
    [[nodiscard]] Column step();

    /// Whether torques drive all free blades back where they are turned off their seats.
    [[nodiscard]] bool seats_are_least();

  private:
    [[nodiscard]] const BeamPlace& place(int i) const {
        return places_[static_cast<std::size_t>(i)];
    }
    [[nodiscard]] const AnyTouch& at(int i) const { return touches_[static_cast<std::size_t>(i)]; }
    [[nodiscard]] const Flexibility& flexibility(int i) const {
        return at(i).far ? joint_.far_end->flexibility : joint_.flexibility;
    }
    [[nodiscard]] Compliance between(int moves, int pressed) const;
    [[nodiscard]] double across_rate(int moves, int pressed) const;
    [[nodiscard]] double bend_rate(int moves, int pressed) const;
    /// Way of the end that one more turn lifts: + own, - far, 0 where the spring does not turn.
    [[nodiscard]] double sense(int i) const { return turns_ ? at(i).far ? -1.0 : 1.0 : 0.0; }

    void solve();
    void differentiate();
    void move(int touch, int column, double by_x, double by_height, double by_slope);
    void move_place(int touch);
    void turn_seat(int touch);

    const Joint& joint_;
    std::span<AnyTouch> touches_;
    int n_, seats_;
    bool turns_;
    std::array<BeamPlace, kMostTouches> places_{};
    Matrix slopes_;                 ///< of the face at one touch per force at another
    Matrix along_, out_, steeper_;  ///< what each unknown does to each touch
    Eigen::PartialPivLU<Matrix> give_;
    Column forces_, misses_, torques_;
    double turn_rad_ = 0.0;
    Matrix rates_;  ///< of misses times forces, and of torques
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
