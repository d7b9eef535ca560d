#pragma once

#include <optional>
#include <span>
#include <vector>

#include "touches_step.hpp"

namespace backspring::detail {

/// All blades of a joint that bear and seat, moved from where they do so in contacts near by to
/// where they do so now. What would pull there lets go; what comes to bear besides is taken in.
class Following {
  public:
    /// @param joint, near  see all_bear_as(); outlive this
    Following(const Joint& joint, double blade_angle_deg, std::span<const Contact* const> near);

    /// @returns  false where Newton's method does not get there, or not to a rest of every blade
    [[nodiscard]] bool found();

    /// The same with what bears besides.
    ///
    /// @param touch  about where, at its own end
    [[nodiscard]] bool found_with(const Touch& touch);

    /// The same with touches in the place of all at their end.
    [[nodiscard]] bool found_instead(const std::vector<Touch>& touches);

    // Afterwards:
    [[nodiscard]] const std::vector<AnyTouch>& touches() const { return touches_; }
    [[nodiscard]] const std::vector<double>& angles_deg() const { return angles_deg_; }
    /// Of a blade, its body and its kick, the roots as free.
    [[nodiscard]] const std::vector<Indenter>& indenters(std::size_t blade) const {
        return indenters_[blade];
    }
    /// Of the own root and the far one.
    [[nodiscard]] const RootMove& root(bool far) const { return roots_[far ? 1 : 0]; }
    /// The blade beside the own one that is taken along, flat on flat; 0: none.
    [[nodiscard]] std::size_t taken_along() const { return taken_along_; }
    [[nodiscard]] bool is_far(std::size_t blade) const { return blade > joint_.beside.size(); }
    /// Whether a blade free to seat on its kick bears nowhere: it stands where it is clear.
    [[nodiscard]] bool is_loose_on_kick(std::size_t blade) const {
        return is_loose(blade) && !on_face(blade);
    }

  private:
    enum class Way { there, pulls, comes, lost };

    [[nodiscard]] const Neighbour& neighbour(std::size_t blade) const;
    [[nodiscard]] const Mounted& tang(std::size_t blade) const {
        return blade == 0 ? joint_ : neighbour(blade).tang;
    }
    [[nodiscard]] bool is_loose(std::size_t blade) const {
        return is_free_[blade] && seats_[blade] < 0;
    }
    [[nodiscard]] bool on_face(std::size_t blade) const { return neighbour(blade).seat_mm > 0.0; }
    void mount(std::size_t blade);
    [[nodiscard]] bool find_seats();
    [[nodiscard]] bool is_taken_along(std::size_t blade, const Touch& touch) const;
    [[nodiscard]] bool stays_along() const;
    [[nodiscard]] bool set_touches();
    void number_seats();
    [[nodiscard]] bool settle();
    [[nodiscard]] bool let_go();
    [[nodiscard]] Way follow();
    [[nodiscard]] bool go(const TouchesStep::Column& by);
    [[nodiscard]] Way keep(TouchesStep& step);
    [[nodiscard]] bool seat_on_flats() const;
    [[nodiscard]] Way set_loose(std::size_t blade);
    void add(const Touch& touch);
    [[nodiscard]] double slope_at_pivot(std::size_t blade) const;

    const Joint& joint_;
    std::span<const Contact* const> near_;
    std::vector<double> angles_deg_;  ///< the own blade's first
    std::vector<std::vector<Indenter>> indenters_;
    std::vector<bool> is_free_;  ///< to seat, by itself
    std::vector<int> seats_;     ///< which of those free to seat that bear a blade is, or -1
    std::vector<AnyTouch> touches_;
    std::size_t count_ = 0;  ///< of seats
    std::size_t taken_along_ = 0;
    std::array<RootMove, 2> roots_{};
};

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
