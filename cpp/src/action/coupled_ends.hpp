#pragma once

#include <optional>
#include <vector>

#include "indenters.hpp"

namespace backspring::detail {

/// Forces of an end and their moment about its root.
struct EndSums {
    double force_n = 0.0, moment_nmm = 0.0;
};

/// How an end's root is moved by the other end.
struct RootMove {
    double lift_mm = 0.0, turn_rad = 0.0;
};

/// Through a frame, but for the turn by the moment, which is in the cross rotation.
///
/// @param far  whether it is the far end's root, moved by the own end
[[nodiscard]] RootMove moved_through(const RootCross& frame, bool far, const EndSums& by);

/// Of two pins, all that the other end does.
[[nodiscard]] RootMove root_moved_by(const FarEnd& joined, bool far, const EndSums& by);

/// One end of a spring with what may bear on it, solved again whenever its root is turned.
class SpringEnd {
  public:
    /// @param pushed  the stop that presses on this end, or none; outlives this
    explicit SpringEnd(const Flexibility& flexibility, const Pushed* pushed = nullptr)
        : flexibility_(flexibility), pushed_(pushed) {}

    /// @param tang  outlives this
    void add(const Mounted& tang, int blade, double blade_angle_deg);

    /// Where the same blades bore at nearly the same angles: it only spares looks.
    void bore(const std::vector<Touch>& touches);

    /// Moment about the root when it is turned outward, besides where it has been moved.
    double moment_nmm(double turn_rad);

    /// Lifts the root, and turns it besides, as a frame that gives does.
    void move_root(double lift_mm, double turn_rad);

    [[nodiscard]] const std::vector<Borne>& borne() const { return borne_; }
    [[nodiscard]] std::vector<Touch> touches() const;
    [[nodiscard]] double turn_rad() const { return turn_rad_ + moved_rad_; }
    [[nodiscard]] double lift_mm() const { return lift_mm_; }
    [[nodiscard]] double moment_nmm() const { return moment_nmm_; }
    [[nodiscard]] double force_n() const { return force_n_; }

    [[nodiscard]] EndSums sums() const { return {force_n_, moment_nmm_}; }

    /// By moments alone: move_root() left out.
    [[nodiscard]] double turned_rad() const { return turn_rad_; }

    /// About how much moment a turn takes away [N mm/rad].
    [[nodiscard]] double stiffness_nmm_per_rad() const;

  private:
    const Flexibility& flexibility_;
    const Pushed* pushed_;
    std::vector<Indenter> indenters_;
    std::vector<double> free_slopes_, free_faces_mm_;
    std::vector<Borne> borne_;
    double turn_rad_ = 0.0;
    double moment_nmm_ = 0.0;
    double force_n_ = 0.0;
    double lift_mm_ = 0.0;
    double moved_rad_ = 0.0;
};

/// What bore the last time, and where both ends' moments were alike, from where the next contact
/// is sought.
struct Balance {
    std::vector<Touch> own{}, far{};
    double turn_rad = 0.0;
    double fall_nmm_per_rad = 0.0;  ///< how fast what is lacking falls; 0: not sought yet
    double nothing_nmm = 0.0;       ///< a lack that is rounding
};

/// Turns both roots until each end feels what the other does; an end alone keeps its root.
///
/// @param last  of the same blades, at other angles; becomes that of these
void settle(SpringEnd& own, SpringEnd* far, const FarEnd* joined, Balance& last);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
