#pragma once

#include <vector>

#include "coupled_ends.hpp"

namespace backspring::detail {

/// All blades of a spring, the joint's own first, then those beside it, then those at the far end.
class Blades {
  public:
    /// @param joint, pushed  outlive this
    explicit Blades(const Joint& joint, const Pushed* pushed = nullptr);

    [[nodiscard]] std::size_t count() const { return neighbours_.size() + 1; }

    /// @param blade  from 1
    [[nodiscard]] const Neighbour& neighbour(std::size_t blade) const {
        return *neighbours_[blade - 1];
    }

    /// Every blade as it bears at an angle of its own.
    [[nodiscard]] std::vector<Contact> at(const std::vector<double>& angles_deg);

    /// As at(), but some of the blades as discs about their pivots, which is what a blade at rest
    /// on a flat face amounts to; their angles then become those of the bent spring there, which
    /// they follow even where they are loose.
    ///
    /// @param faces  which blades seat on a face
    [[nodiscard]] std::vector<Contact> on_faces(std::vector<double>& angles_deg,
                                                const std::vector<bool>& faces);

    /// Whether two blades, each from 1, are at one end of the spring.
    [[nodiscard]] bool side_by_side(std::size_t a, std::size_t b) const {
        const std::size_t beside = joint_.beside.size();
        return (a <= beside) == (b <= beside);
    }

    /// Takes a blade off the spring, or puts it back.
    ///
    /// @param blade  from 1
    void take_off(std::size_t blade, bool off) { off_[blade - 1] = off; }

  private:
    using Outlines = std::vector<const Mounted*>;

    [[nodiscard]] Outlines outlines() const;
    [[nodiscard]] std::vector<Contact> solve(const std::vector<double>& angles_deg,
                                             const Outlines& tangs);
    [[nodiscard]] double face_slope(const std::vector<Contact>& blades, std::size_t blade) const;

    const Joint& joint_;
    const Pushed* pushed_;
    std::vector<const Neighbour*> neighbours_;
    std::vector<bool> off_;
    Balance last_;
};

/// The own blade at an angle, the others where they stand or seat.
[[nodiscard]] std::vector<Contact> seated(Blades blades, double blade_angle_deg);

/// The own blade, open, the others where they stand, discs on their faces, or where they seat on a
/// kick.
[[nodiscard]] Contact on_faces(Blades blades);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
