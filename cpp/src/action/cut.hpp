#pragma once

#include <cstddef>
#include <optional>

#include "backspring/action/contact.hpp"

namespace backspring::detail {

/// What bears, as a number: it is another one where another part of a tang, of any blade, or an
/// edge of the own pad comes to bear.
[[nodiscard]] std::size_t bearing_kind(const Contact& contact, const Pad& pad);

/// Looks for a cut between two contacts that bear in different ways.
class CutSearch {
  public:
    /// @param joint  outlives this
    CutSearch(const Joint& joint, double cut_deg) : joint_(&joint), cut_deg_(cut_deg) {}

    /// Where to look next: by a secant on that side of the cut from which it can be told how far it
    /// is, a little beyond; or, once that is beyond, a little before; else half-way.
    ///
    /// @param low, high  contacts on either side, closer from call to call
    [[nodiscard]] double next_deg(const Contact& low, const Contact& high);

  private:
    /// How far it was to the cut from an angle.
    struct Told {
        double angle_deg = 0.0, left = 0.0;
        bool known = false;
    };

    void keep(double angle_deg, double left, bool from_low);

    const Joint* joint_;
    double cut_deg_;
    Told told_, before_;
    double zero_deg_ = 0.0, doubt_deg_ = 0.0;
    int round_ = 0;
    bool from_low_ = false;
};

/// How far a contact is from going over to another one's way of bearing: it vanishes there, and its
/// way goes on smoothly. None where that is to be told from the other one.
[[nodiscard]] std::optional<double> left_to(const Joint& joint,
                                            const Contact& contact,
                                            const Contact& other);

/// Where the kick of a blade alone, or its body, comes to bear beside the other, between a contact
/// of one and a contact of both [deg]. None where that is not known.
[[nodiscard]] std::optional<double> comes_to_bear_deg(const Joint& joint,
                                                      const Contact& low,
                                                      const Contact& high);

}  // namespace backspring::detail

namespace backspring {
using namespace detail;
}
