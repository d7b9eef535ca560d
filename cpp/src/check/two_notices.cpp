#include <algorithm>
#include <cmath>

#include "notices.hpp"
#include "two_view.hpp"

namespace backspring {
namespace {


std::string spoken(std::string name) {
    std::replace(name.begin(), name.end(), '_', '-');
    return name;
}

/// Tells once what holds beside some of the other blade's positions, and beside which.
class BesideNotices {
  public:
    BesideNotices(std::vector<Notice>& notices,
                  const TwoView& view,
                  const std::vector<Beside>& rows)
        : notices_(notices), view_(view), rows_(rows) {}

    template <class Holds>
    void add_if(Holds holds, const char* code, const std::string& message) {
        std::string beside;
        for (const Beside& row : rows_) {
            if (!holds(row)) continue;
            beside += (beside.empty() ? "" : ", ") + spoken(row.other);
        }
        if (beside.empty()) return;
        const std::string which = view_.second ? "second blade" : "first blade";
        notices_.push_back({code, which + ", the other " + beside + ": " + message});
    }

  private:
    std::vector<Notice>& notices_;
    const TwoView& view_;
    const std::vector<Beside>& rows_;
};

bool rests(const Beside& row, const char* name) { return row.position(name) != nullptr; }

bool steep(const TwoView& view, const std::vector<Beside>& rows) {
    double steepest = std::abs(view.joint().face_slope);
    for (const Place& own : places_of(view.own.tang)) {
        for (const Place& other : places_of(view.other.tang)) {
            const auto both = view.at(own.stand, other.stand);
            if (!both) continue;
            for (const Touch& touch : view.own_contact(*both).all()) {
                steepest = std::max(steepest, std::abs(touch.slope));
            }
        }
    }
    return !rows.empty() && steepest > kSmallSlope;
}

}  // namespace

void add_notices(std::vector<Notice>& notices,
                 const TwoView& view,
                 const std::vector<Beside>& rows) {
    BesideNotices told(notices, view, rows);
    told.add_if(
        [](const Beside& row) {
            const Position* open = row.position("open");
            return open && open->force_n > 0.0 && open->torque_nmm > 0.0;
        },
        "not-held-open", "the spring bears ahead of the pivot and would close it");
    told.add_if([](const Beside& row) { return rests(row, "open") && !rests(row, "closed"); },
                "not-held-closed", "it finds no rest near 0 deg; the spring would throw it open");
    told.add_if(
        [&](const Beside& row) {
            return view.own.tang.half_stop_mm && rests(row, "open") && !rests(row, "half_stop");
        },
        "no-half-stop-rest", "it finds no rest near 90 deg; its face does not hold it");
    told.add_if(
        [](const Beside& row) {
            return std::any_of(row.positions.begin(), row.positions.end(),
                               [](const Position& p) { return p.force_n == 0.0; });
        },
        "lifted-off", "its tang does not touch the spring in some position; it is loose");
    told.add_if(
        [](const Beside& row) { return rests(row, "open") && row.other_force_low_n == 0.0; },
        "other-loose", "turning it takes the spring off the other tang, which is loose then");
    told.add_if([](const Beside& row) { return row.travel.yield_margin.value_or(2.0) < 1.0; },
                "yields", "the outer fibre yields on the way: expect the spring to take a set");
    told.add_if(
        [](const Beside& row) {
            return row.travel.yield_margin.value_or(0.0) >= 1.0 &&
                   *row.travel.yield_margin_low < 1.0;
        },
        "may-yield", "at the low end of what this steel may carry the outer fibre yields");
    const bool is_steep = steep(view, rows);
    told.add_if([&](const Beside& row) { return is_steep && row.other == "open"; }, "steep",
                "spring or face slopes more than 0.1 where they meet: the small-slope model loses "
                "accuracy (error of order slope squared)");
}

}  // namespace backspring
