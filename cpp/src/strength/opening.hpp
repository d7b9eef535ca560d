#pragma once

#include <optional>
#include <vector>

#include "backspring/action/turns.hpp"
#include "backspring/strength/plastic_spring.hpp"
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
    /// @param ways     of a spring of softer steel
    /// @param softer   how its yield stress compares
    Opening(const Turns& travel,
            PlasticSpring plastic,
            std::span<const StressedWay> ways,
            double softer);

    /// Opens the blade once; whether that sets the spring further.
    ///
    /// On each piece of the travel it is bent where it is stressed farthest beyond what it bears,
    /// then where what is left would set it most, until that is slight.
    bool open();

    [[nodiscard]] const FaceShift& shift() const { return shift_; }
    [[nodiscard]] std::vector<PlasticZone> zones() const { return plastic_.zones(); }
    [[nodiscard]] int contacts() const { return contacts_; }

  private:
    /// A piece of the travel over which the spring is stressed beyond what it bears elastically.
    struct Way {
        double worst_deg;                     ///< where it is stressed most
        double beyond;                        ///< how far, there; 1: just elastic
        StressedPiece forces;                 ///< along it
        double from_deg = 0.0, to_deg = 0.0;  ///< where it may yield
        bool gone_over = false;
    };

    [[nodiscard]] Contact contact_in(Joint& joint, const FaceShift& shift, double angle_deg);
    void add_way(const StressedWay& way, double softer);
    void find_ends(Way& way, double first_deg, double last_deg) const;
    [[nodiscard]] bool go_over(Way& way);
    [[nodiscard]] std::optional<Contact> next_contact(Way& way);
    void refresh_about(Way& way);
    void refresh(SeenForces& seen);
    [[nodiscard]] bool sets_further(const Loads& loads) const;
    [[nodiscard]] double added_mm(const Loads& loads) const;
    [[nodiscard]] double slight_mm() const;
    [[nodiscard]] double far_mm(const FaceShift& shift) const;
    Loads settle(Contact contact);

    const Action& fitted_;
    std::vector<Way> ways_;
    std::size_t last_to_set_ = 0;
    Joint moved_;  // with the face as it is by now
    PlasticSpring plastic_;
    FaceShift shift_;
    int contacts_ = 0;  // looked for
};

/// The moments of loads, none of which bears behind a station.
[[nodiscard]] MomentLine line_of(std::span<const Load> loads, double ahead_mm);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
