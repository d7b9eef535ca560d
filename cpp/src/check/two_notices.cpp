#include <algorithm>
#include <cmath>

#include "notices.hpp"
#include "two_view.hpp"

namespace backspring {
namespace {

/// Tells once what holds beside some of the other blade's positions, and beside which.
class BesideNotices {
  public:
    BesideNotices(std::vector<Notice>& notices,
                  const TwoView& view,
                  const std::vector<Beside>& rows)
        : notices_(notices), view_(view), rows_(rows) {}

    template <class Holds>
    void add_if(Holds holds, NoticeCode code) {
        std::string beside;
        for (const Beside& row : rows_) {
            if (!holds(row)) continue;
            beside += (beside.empty() ? "" : ",") + row.other;
        }
        if (beside.empty()) return;
        notices_.push_back(
            {.code = code,
             .names = {{"blade", view_.second ? "second" : "first"}, {"beside", beside}}});
    }

  private:
    std::vector<Notice>& notices_;
    const TwoView& view_;
    const std::vector<Beside>& rows_;
};

bool rests(const Beside& row, const char* name) { return row.position(name) != nullptr; }

bool steep(const TwoView& view, const std::vector<Beside>& rows) {
    double steepest = std::abs(view.joint().face_slope);
    for (const Place& own : places_of(view.own.own().tang)) {
        for (const Place& other : places_of(view.other.own().tang)) {
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

void detail::add_notices(std::vector<Notice>& notices,
                         const TwoView& view,
                         const std::vector<Beside>& rows) {
    BesideNotices found(notices, view, rows);
    found.add_if(
        [](const Beside& row) {
            const Position* open = row.position("open");
            return open && open->force_n > 0.0 && open->torque_nmm > 0.0;
        },
        NoticeCode::not_held_open);
    found.add_if([](const Beside& row) { return rests(row, "open") && !rests(row, "closed"); },
                 NoticeCode::not_held_closed);
    found.add_if(
        [&](const Beside& row) {
            return view.own.own().tang.half_stop_mm && rests(row, "open") &&
                   !rests(row, "half_stop");
        },
        NoticeCode::no_half_stop_rest);
    found.add_if(
        [](const Beside& row) {
            return std::any_of(row.positions.begin(), row.positions.end(),
                               [](const Position& p) { return p.force_n == 0.0; });
        },
        NoticeCode::lifted_off);
    found.add_if(
        [](const Beside& row) { return rests(row, "open") && row.other_force_low_n == 0.0; },
        NoticeCode::other_loose);
    found.add_if([](const Beside& row) { return row.travel.yield_margin.value_or(2.0) < 1.0; },
                 NoticeCode::yields);
    found.add_if(
        [](const Beside& row) {
            return row.travel.yield_margin.value_or(0.0) >= 1.0 &&
                   *row.travel.yield_margin_low < 1.0;
        },
        NoticeCode::may_yield);
    const bool is_steep = steep(view, rows);
    found.add_if([&](const Beside& row) { return is_steep && row.other == "open"; },
                 NoticeCode::steep);
}

}  // namespace backspring
