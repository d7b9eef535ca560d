#pragma once

#include <optional>
#include <vector>

#include "backspring/action/turns.hpp"
#include "backspring/strength/plastic_spring.hpp"
#include "setting_forces.hpp"
#include "stressed_piece.hpp"

namespace backspring::detail {

/// A piece of a travel over which the spring is stressed, elastic, nearly or more than it bears.
struct StressedWay {
    StressedPiece forces;            ///< along it
    std::vector<double> beyond;      ///< how far at each of its turns; 1: just elastic
    double worst_deg, worst_beyond;  ///< where it is stressed most
};

/// The pieces of a travel that may make a spring yield.
[[nodiscard]] std::vector<StressedWay> stressed_ways(const Turns& travel,
                                                     const PlasticSpring& plastic);

/// A spring whose blade is opened, each angle elastic or bending it further.
class Opening {
  public:
    /// @param travel   of the joint as fitted; outlives this
    /// @param plastic  not yet bent
    /// @param ways     of a spring of softer steel; outlive this
    /// @param softer   how its yield stress compares
    Opening(const Turns& travel,
            PlasticSpring plastic,
            std::span<const StressedWay> ways,
            double softer);

    /// Opens the blade once; whether that sets the spring further.
    ///
    /// On each piece of the travel it is bent as the blade passes, from where it is bent most far
    /// ahead to where it is bent most at its root; then, if at all, where what is left would set it
    /// most, until that is slight.
    bool open();

    [[nodiscard]] const FaceShift& shift() const { return shift_; }
    [[nodiscard]] std::vector<PlasticZone> zones() const { return plastic_.zones(); }
    [[nodiscard]] int contacts() const { return contacts_; }

  private:
    /// A piece of the travel over which the spring is stressed beyond what it bears elastically.
    struct Way {
        double worst_deg;                     ///< where it is stressed most
        double beyond;                        ///< how far, there; 1: just elastic
        const StressedPiece* as_fitted;       ///< forces along it before anything set
        StressedPiece forces;                 ///< by now
        double from_deg = 0.0, to_deg = 0.0;  ///< where it may yield
        bool gone_over = false;
    };

    /// An angle to stop at.
    struct Stop {
        double angle_deg;
        std::optional<Load> as_fitted{};  ///< of one touch, on the spring as fitted
    };

    /// The spring held by what touches it at a stop.
    struct Held {
        Setting setting;
        std::optional<HeldPlace> place{};  ///< of one touch, by the set
    };

    [[nodiscard]] Contact contact_in(Joint& joint, const FaceShift& shift, double angle_deg);
    void add_way(const StressedWay& way, double softer);
    [[nodiscard]] HeldPlace place_of(const Contact& contact,
                                     const FaceShift& shift,
                                     const Stop& stop) const;
    [[nodiscard]] Setting force_at(const HeldPlace& about,
                                   const Loads& guess,
                                   const Enough& enough) const;
    [[nodiscard]] bool go_over(Way& way);
    [[nodiscard]] bool stop_in_turn(Way& way);
    [[nodiscard]] std::vector<Stop> stops_of(const Way& way, const Setting& most) const;
    [[nodiscard]] bool bend_between(std::span<const SeenForces> stopped);
    [[nodiscard]] std::optional<Stop> next_stop(Way& way);
    void refresh_about(Way& way) const;
    [[nodiscard]] double added_mm(const Loads& loads) const;
    [[nodiscard]] double slight_mm() const;
    [[nodiscard]] double far_mm(const FaceShift& shift) const;
    [[nodiscard]] Held held_at(const Stop& stop, FaceShift guess, const Loads& forces);
    [[nodiscard]] Held held_again(const Held& before, const Stop& stop);
    [[nodiscard]] bool bend(const Setting& setting);

    const Action& fitted_;
    std::vector<Way> ways_;
    std::size_t last_to_set_ = 0;
    Joint moved_;  // with the face as it is by now
    PlasticSpring plastic_;
    FaceShift shift_;
    int contacts_ = 0;  // looked for
};

/// A shift and so many times another.
[[nodiscard]] inline FaceShift moved(const FaceShift& from, double way, const FaceShift& by) {
    return {from.height_mm + way * by.height_mm, from.slope + way * by.slope};
}

/// The moments of loads, none of which bears behind a station.
[[nodiscard]] MomentLine line_of(std::span<const Load> loads, double ahead_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
