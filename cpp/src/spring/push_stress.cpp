#include <algorithm>
#include <cmath>

#include "backspring/spring/axial_push.hpp"
#include "taper_peak.hpp"

namespace backspring {
namespace {

using Place = StressProbe::Place;
using Taper = StressProbe::Taper;

class PushStress {
  public:
    PushStress(const StressProbe& probe,
               std::span<const Load> loads,
               const AxialPush& push,
               double push_n)
        : probe_(probe), loads_(loads), push_(push), push_n_(push_n) {}

    [[nodiscard]] PeakStress peak() {
        const Place& behind = probe_.behind;
        const double root = loads_moment(0.0) + push_n_ * push_.root_lever_mm();
        look({behind.x_mm, behind.stress_per_moment}, root, 0.0);
        for (std::size_t i = 0; i < push_.pieces.size(); ++i) {
            const bool last = i + 1 == push_.pieces.size();
            along(push_.pieces[i], last ? push_.at_mm : push_.pieces[i + 1].x_mm);
        }
        return peak_;
    }

  private:
    [[nodiscard]] double loads_moment(double x) const {
        double moment = 0.0;
        for (const Load& load : loads_) moment += load.force_n * std::max(load.x_mm - x, 0.0);
        return moment;
    }

    /// In a piece, its own lever at both ends.
    [[nodiscard]] double moment_in(const AxialPush::Piece& piece, double x) const {
        const double lever = piece.lever_mm + piece.lever_slope * (x - piece.x_mm);
        return loads_moment(x) + push_n_ * lever;
    }

    void look(const Place& place, double moment_nmm, double push_n) {
        const double stress =
            std::abs(moment_nmm) * place.stress_per_moment + push_n * place.stress_per_push;
        if (stress > peak_.stress_mpa) peak_ = {stress, place.x_mm};
    }

    void along(const AxialPush::Piece& piece, double end_mm) {
        const Place start{piece.x_mm, piece.stress_per_moment, piece.stress_per_push};
        look(start, moment_in(piece, piece.x_mm), push_n_);
        for (const Place& place : probe_.ahead) {
            if (place.x_mm <= piece.x_mm || place.x_mm > end_mm) continue;
            look(place, moment_in(piece, place.x_mm), push_n_);
            // At a step the place behind it comes first; the one ahead has the next piece's lever.
            if (place.x_mm == end_mm) break;
        }
        const auto whole = std::ranges::find_if(probe_.taper, [&](const Taper& taper) {
            return taper.start.x_mm <= piece.x_mm && piece.x_mm < taper.end.x_mm;
        });
        if (whole == probe_.taper.end()) return;
        double from = piece.x_mm;
        for (const Load& load : loads_) {
            if (load.x_mm <= from || load.x_mm >= end_mm) continue;
            inside(*whole, piece, from, load.x_mm);
            from = load.x_mm;
        }
        inside(*whole, piece, from, end_mm);
    }

    /// Between the ends of a straight way in a taper, the even stress as that of a moment.
    void inside(const Taper& taper, const AxialPush::Piece& piece, double from, double to) {
        const double per_thickness =
            piece.stress_per_push / piece.stress_per_moment / thickness_mm(taper, piece.x_mm);
        const auto even = [&](double x) {
            return push_n_ * per_thickness * thickness_mm(taper, x);
        };
        for (const double side : {1.0, -1.0}) {
            const double first = side * moment_in(piece, from) + even(from);
            const double last = side * moment_in(piece, to) + even(to);
            if (first == last) continue;
            const auto peak = taper_peak(taper, from + (to - from) * first / (first - last));
            if (!peak || peak->x_mm <= from || peak->x_mm >= to) continue;
            const double moment = std::lerp(first, last, (peak->x_mm - from) / (to - from));
            if (moment > 0.0) look(*peak, moment, 0.0);
        }
    }

    static double thickness_mm(const Taper& taper, double x) {
        const double share = (x - taper.start.x_mm) / (taper.end.x_mm - taper.start.x_mm);
        return std::lerp(taper.start.thickness_mm, taper.end.thickness_mm, share);
    }

    const StressProbe& probe_;
    std::span<const Load> loads_;
    const AxialPush& push_;
    double push_n_;
    PeakStress peak_;
};

}  // namespace

PeakStress peak_stress(const StressProbe& probe,
                       std::span<const Load> loads,
                       const AxialPush& push,
                       double push_n) {
    return PushStress(probe, loads, push, push_n).peak();
}

}  // namespace backspring
