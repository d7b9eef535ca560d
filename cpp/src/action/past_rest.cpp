#include "past_rest.hpp"

#include <algorithm>
#include <array>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>

#include "backspring/core/angle.hpp"
#include "window.hpp"

namespace backspring {
namespace {

constexpr double kLastDeg = -45.0;
constexpr double kFirstDeg = 1.0;
// Torque that adds up so closely is told by its polynomial: as a share of the energy stored, and
// beside others, where it may step a little (see Turns), of the energy to be taken up.
constexpr double kToldAlone = 1e-8;
constexpr double kToldBeside = 1e-3;
constexpr double kRoundingAtRest = 1e-14;  // of the energy at the rest
constexpr int kMostHalvings = 5;
constexpr double kThereRad = 1e-13;

// Chebyshev's places, each far from those before it.
constexpr int kPlaces = 9;
constexpr std::array<int, kPlaces> kOrder{0, 8, 4, 2, 6, 1, 3, 5, 7};

/// So far that the spring alone takes an energy up; friction only helps.
double last_deg(const Joint& joint, const Contact& closed, double energy_mj) {
    const double rest = closed.blade_angle_deg;
    double last = rest - kFirstDeg;
    for (double depth = kFirstDeg; last > kLastDeg; last = std::max(rest - depth, kLastDeg)) {
        const double stored = contact_at(joint, last).energy_nmm - closed.energy_nmm;
        if (stored >= energy_mj) break;
        depth *= stored > 0.0 ? std::clamp(1.2 * energy_mj / stored, 1.3, 16.0) : 4.0;
    }
    return last;
}

double integral(const Interpolant& curve, double from, double to) {
    using Rule = boost::math::quadrature::gauss<double, 7>;
    return Rule::integrate([&](double x) { return curve.value_at(x); }, from, to);
}

}  // namespace

double detail::PastRest::Section::work_to_mj(double past_rad) const {
    return work_mj + integral(friction_nmm, from_rad, past_rad);
}

double detail::PastRest::Section::taken_to_mj(double past_rad) const {
    return stored_mj.value_at(past_rad) + work_to_mj(past_rad);
}

/// By Newton's method within the section.
double detail::PastRest::Section::place_of(double energy_mj) const {
    constexpr int most_steps = 60;
    double low = from_rad, high = to_rad, past = 0.5 * (low + high);
    for (int step = 0; step < most_steps; ++step) {
        const double more = taken_to_mj(past) - energy_mj;
        (more < 0.0 ? low : high) = past;
        const double rate = stored_mj.at(past).slope + friction_nmm.value_at(past);
        const double newton = past - more / rate;
        const bool inside = newton > low && newton < high;
        const double next = inside ? newton : 0.5 * (low + high);
        const double moved = std::abs(next - std::exchange(past, next));
        if (moved <= kThereRad) break;
    }
    return past;
}

detail::PastRest::PastRest(const Action& action, const Contact& closed, double most_mj)
    : action_(action), closed_(closed), most_mj_(most_mj) {
    const double rest = closed.blade_angle_deg;
    const Turns turns(action, {last_deg(action.joint, closed, most_mj), rest}, TurnsAt::cuts);
    const auto pieces = turns.pieces();
    for (std::size_t p = pieces.size(); p-- > 0;) {
        const double from = radians(rest - angle_of(pieces[p].back()));
        const double to = radians(rest - angle_of(pieces[p].front()));
        if (from < to) add(pieces[p], from, to, kMostHalvings);
        const bool enough =
            !sections_.empty() && sections_.back().taken_to_mj(sections_.back().to_rad) >= most_mj;
        if (enough) break;
    }
}

double detail::PastRest::angle_deg(double past_rad) const {
    return closed_.blade_angle_deg - degrees(past_rad);
}

/// Adds a part of a piece, in halves where a polynomial does not tell it.
void detail::PastRest::add(const Piece& piece, double from_rad, double to_rad, int halvings) {
    Section section{from_rad, to_rad, 0.0};
    if (!sections_.empty()) section.work_mj = sections_.back().work_to_mj(sections_.back().to_rad);
    Interpolant torque;
    PlaceCurve way = way_about(action_, piece, {0, std::min<std::size_t>(piece.size(), 4) - 1});
    std::array<double, kPlaces> places{}, stored{};
    for (const int k : kOrder) {
        const double share = 0.5 - 0.5 * std::cos(std::numbers::pi * k / (kPlaces - 1));
        const double past = std::lerp(from_rad, to_rad, share);
        const Turn turn = turn_near(action_, angle_deg(past), way);
        if (k != 0 && k + 1 != kPlaces) way.add(turn.contact);
        const auto i = static_cast<std::size_t>(k);
        places[i] = past;
        stored[i] = turn.contact.energy_nmm - closed_.energy_nmm;
        section.stored_mj.add(past, stored[i]);
        section.friction_nmm.add(past, turn.friction_nmm);
        torque.add(past, -turn.contact.torque_nmm);
    }
    const bool alone = action_.joint.alone();
    const double told = alone ? kToldAlone : kToldBeside, least = alone ? 0.0 : most_mj_;
    const double rounding = kRoundingAtRest * closed_.energy_nmm;
    const auto adds_up = [&](std::size_t from, std::size_t to) {
        const double gained = stored[to] - stored[from];
        const double most = std::max({std::abs(stored[to]), std::abs(stored[from]), least});
        return std::abs(integral(torque, places[from], places[to]) - gained) <=
               told * most + rounding;
    };
    constexpr std::size_t middle = kPlaces / 2, last = kPlaces - 1;
    if (halvings > 0 && !(adds_up(0, middle) && adds_up(middle, last))) {
        add(piece, from_rad, places[middle], halvings - 1);
        add(piece, places[middle], to_rad, halvings - 1);
        return;
    }
    sections_.push_back(section);
}

std::optional<Overtravel> detail::PastRest::taking_up(double energy_mj) const {
    for (const Section& section : sections_) {
        if (section.taken_to_mj(section.to_rad) < energy_mj) continue;
        const double past = section.place_of(energy_mj);
        // The contact there tells what is stored, and its torque the little way that is left.
        const Turn turn = turn_at(action_, angle_deg(past));
        const double stored = turn.contact.energy_nmm - closed_.energy_nmm;
        const double work = section.work_to_mj(past), torque = -turn.contact.torque_nmm;
        const double left = (energy_mj - stored - work) / (torque + turn.friction_nmm);
        return Overtravel{.angle_deg = degrees(past + left),
                          .stored_mj = stored + torque * left,
                          .friction_work_mj = work + turn.friction_nmm * left};
    }
    return std::nullopt;
}

}  // namespace backspring
