#include "lets_go.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/core/angle.hpp"
#include "bearing.hpp"
#include "tent.hpp"

namespace backspring {
namespace {

constexpr int kMostTurns = 20;
constexpr double kMostTurnRad = 0.2;
// So near to where it lets go a search for that ends, beyond it.
constexpr double kBeyondDeg = 4e-10;
constexpr double kMeetMm = 1e-9;

/// A blade that is turned on a face that others bend.
class TurnedLoose {
  public:
    TurnedLoose(const FaceAsBent& face, const Neighbour& other, int blade)
        : face_(face),
          other_(other),
          blade_(blade),
          seat_(at(other.seat_deg)),
          to_seat_(deepest(seat_).lever_mm > 0.0 ? 1.0 : -1.0) {}

    [[nodiscard]] bool is_clear_at_seat() const { return deepest(seat_).overlap_mm <= rounding(); }

    /// By Newton's method from an angle.
    [[nodiscard]] std::optional<Loose> from(double angle_deg) const {
        double angle = angle_deg;
        for (int step = 0; step < kMostTurns && in_reach(angle); ++step) {
            const Parts there = angle == other_.seat_deg ? seat_ : at(angle);
            const StandsOut& most = deepest(there);
            if (most.touch.part.flat && face_.has_flat()) return std::nullopt;
            const bool this_side = most.lever_mm * to_seat_ > 0.0;
            if (std::abs(most.overlap_mm) <= rounding()) {
                if (!this_side) return std::nullopt;
                return Loose{angle - to_seat_ * kBeyondDeg, {}};
            }
            if (most.overlap_mm > 0.0 && !this_side) return both_bear(there, angle);
            const double turn = -most.overlap_mm / most.lever_mm;
            if (!(std::abs(turn) < kMostTurnRad)) return std::nullopt;
            angle += degrees(turn);
        }
        return std::nullopt;
    }

  private:
    using Parts = std::array<StandsOut, 2>;

    [[nodiscard]] Parts at(double angle_deg) const {
        return face_.parts_of(other_.tang, blade_, angle_deg);
    }
    static const StandsOut& deepest(const Parts& parts) {
        return parts[1].overlap_mm > parts[0].overlap_mm ? parts[1] : parts[0];
    }
    [[nodiscard]] double rounding() const { return kRoundingOfLength * other_.tang.pivot_mm; }
    [[nodiscard]] bool in_reach(double angle_deg) const {
        const auto [nominal_deg, reach_deg] = other_.standing;
        return std::abs(angle_deg - nominal_deg) <= reach_deg;
    }

    /// About where body and kick stand in the face alike.
    [[nodiscard]] std::optional<Loose> both_bear(Parts parts, double angle_deg) const {
        for (int step = 0; step < kMostTurns && in_reach(angle_deg); ++step) {
            const auto& [body, kick] = parts;
            const double apart = body.overlap_mm - kick.overlap_mm;
            if (std::abs(apart) < kMeetMm) {
                if (!(body.overlap_mm > 0.0)) return std::nullopt;
                return Loose{angle_deg, {body.touch, kick.touch}};
            }
            const double turn = -apart / (body.lever_mm - kick.lever_mm);
            if (!(std::abs(turn) < kMostTurnRad)) return std::nullopt;
            angle_deg += degrees(turn);
            parts = at(angle_deg);
        }
        return std::nullopt;
    }

    const FaceAsBent& face_;
    const Neighbour& other_;
    int blade_;
    Parts seat_;
    double to_seat_;  ///< the way that it is turned in from where it lets go
};

}  // namespace

detail::FaceAsBent::FaceAsBent(const Flexibility& flexibility,
                               std::span<const AnyTouch> touches,
                               bool far,
                               const RootMove& root)
    : flexibility_(flexibility), root_(root) {
    for (const AnyTouch& each : touches) {
        if (each.far != far) continue;
        forces_.push_back({beam_place(flexibility, each.touch.x_mm), each.touch.force_n});
        has_flat_ = has_flat_ || each.touch.part.flat;
    }
}

std::array<StandsOut, 2> detail::FaceAsBent::parts_of(const Mounted& tang,
                                                      int blade,
                                                      double blade_angle_deg) const {
    constexpr double endless = std::numeric_limits<double>::infinity();
    std::vector<Indenter> parts;
    add_indenters(parts, tang, blade, blade_angle_deg);
    std::array<StandsOut, 2> found{StandsOut{-endless, 0.0, {}}, StandsOut{-endless, 0.0, {}}};
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Indenter& part = parts[i];
        const auto spring = [&](double x) {
            const BeamPlace here = beam_place(flexibility_, x);
            Answer bent{part.face_at_mm(x) + root_.lift_mm + root_.turn_rad * x,
                        part.face_slope_at(x) + root_.turn_rad, 0.0, 0.0};
            for (const Force& each : forces_) {
                const Compliance by = beside_compliance(flexibility_, here, each.place);
                bent.face_mm += each.force_n * by.mm_per_n;
                bent.slope += each.force_n * by.rad_per_n;
            }
            return bent;
        };
        const Range all{0.5 * part.pad.start_mm, endless};
        auto touch = BearingSearch(part.outline, part.pivot_mm, all, spring).on(part.pad);
        if (!touch) continue;
        touch->part = named(part, touch->part);
        const double lever = touch->x_mm - part.pivot_mm + touch->slope * touch->height_mm;
        found[i] = {touch->height_mm - spring(touch->x_mm).face_mm, lever, *touch};
    }
    return found;
}

std::optional<Loose> detail::loose_at(const FaceAsBent& face,
                                      const Neighbour& other,
                                      int blade,
                                      double about_deg) {
    const TurnedLoose turned(face, other, blade);
    if (turned.is_clear_at_seat()) return Loose{other.seat_deg, {}};
    if (about_deg != other.seat_deg) {
        const auto near = turned.from(about_deg);
        if (near && near->bear.empty()) return near;
    }
    return turned.from(other.seat_deg);
}

}  // namespace backspring
