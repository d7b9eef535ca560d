#include "lazy_travel.hpp"

namespace backspring {
namespace {

constexpr double kOpenDeg = 180.0;
constexpr double kSlack = 1e-9;

int grid_count(double start_deg) {
    const double whole = std::floor(kOpenDeg - start_deg + kSlack);
    const bool ends_open = kOpenDeg - (start_deg + whole) <= kSlack;
    return static_cast<int>(whole) + (ends_open ? 1 : 2);
}

}  // namespace

int bearing_kind(const Contact& contact, const Pad& pad) {
    int kind = contact.count;
    for (const Touch& touch : contact.all()) {
        const bool at_edge = touch.x_mm == pad.start_mm || touch.x_mm == pad.end_mm;
        kind = 2 * kind + (at_edge ? 1 : 0);
    }
    return kind;
}

LazyTravel::LazyTravel(const Action& action, double start_deg)
    : action_(action),
      start_deg_(start_deg),
      turns_(static_cast<std::size_t>(grid_count(start_deg))),
      known_(turns_.size(), false) {}

double LazyTravel::angle_deg(int i) const { return std::min(start_deg_ + i, kOpenDeg); }

const Turn& LazyTravel::turn(int i) {
    const auto at = static_cast<std::size_t>(i);
    if (!known_[at]) {
        turns_[at] = turn_at(action_, angle_deg(i));
        known_[at] = true;
    }
    return turns_[at];
}

LazyStroke::LazyStroke(LazyTravel& travel, const Contact& from, const Contact& to)
    : travel_(travel),
      from_(turn_at(travel.action(), from.blade_angle_deg)),
      to_(turn_at(travel.action(), to.blade_angle_deg)),
      first_(0),
      end_(travel.count()) {
    while (first_ < end_ && travel.angle_deg(first_) <= from.blade_angle_deg) ++first_;
    while (end_ > first_ && travel.angle_deg(end_ - 1) >= to.blade_angle_deg) --end_;
}

const Turn& LazyStroke::turn(int i) {
    if (i == 0) return from_;
    return i + 1 == count() ? to_ : travel_.turn(first_ + i - 1);
}

}  // namespace backspring
