#include "opening.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "backspring/core/root.hpp"
#include "backspring/strength/plastic_set.hpp"
#include "setting_forces.hpp"

namespace backspring {
namespace {

constexpr int kMostBends = 30;
// What the curves promise is not there where another part comes to bear.
constexpr int kMostInVain = 2;
// A piece whose turns all bend it by less of that stays elastic between them, too.
constexpr double kHardly = 0.9;
constexpr int kLooks = 16;
constexpr double kNearly = 0.02;
// What an angle adds to the set; a dial reads a hundredth of a millimetre.
constexpr double kSlightShare = 2e-4, kSlightMm = 1e-9;

}  // namespace

MomentLine detail::line_of(std::span<const Load> loads, double ahead_mm) {
    MomentLine line{.ahead_mm = ahead_mm};
    for (const Load& load : loads) {
        line.root_nmm += load.force_n * load.x_mm;
        line.ahead_nmm += load.force_n * std::max(load.x_mm - ahead_mm, 0.0);
    }
    return line;
}

std::vector<StressedWay> detail::stressed_ways(const Turns& travel, const PlasticSpring& plastic) {
    const auto beyond = [&](const Loads& loads) { return plastic.beyond_elastic(loads); };
    std::vector<StressedWay> ways;
    for (const Piece& piece : travel.pieces()) {
        std::vector<SeenForces> seen;
        std::vector<double> all;
        seen.reserve(piece.size());
        all.reserve(piece.size());
        for (const Turn* turn : piece) {
            seen.push_back({angle_of(turn), loads_ahead(turn->contact)});
            all.push_back(beyond(seen.back().loads));
        }
        if (*std::ranges::max_element(all) <= kHardly) continue;
        StressedPiece forces(std::move(seen));
        const double worst =
            forces.top_deg(angle_of(piece.front()), angle_of(piece.back()), beyond);
        const double worst_beyond =
            std::max(*std::ranges::max_element(all), beyond(forces.at(worst)));
        ways.push_back({std::move(forces), std::move(all), worst, worst_beyond});
    }
    return ways;
}

Opening::Opening(const Turns& travel,
                 PlasticSpring plastic,
                 std::span<const StressedWay> ways,
                 double softer)
    : fitted_(travel.action()), moved_(fitted_.joint), plastic_(std::move(plastic)) {
    for (const StressedWay& way : ways) add_way(way, softer);
    last_to_set_ = ways_.size();
}

void Opening::add_way(const StressedWay& stressed, double softer) {
    Way way{stressed.worst_deg, softer * stressed.worst_beyond, &stressed.forces, stressed.forces};
    if (way.beyond <= 1.0) return;
    double first_deg = way.worst_deg, last_deg = way.worst_deg;
    for (std::size_t i = 0; i < stressed.beyond.size(); ++i) {
        if (softer * stressed.beyond[i] <= 1.0) continue;
        const double angle = way.forces.seen()[i].angle_deg;
        first_deg = std::min(first_deg, angle);
        last_deg = std::max(last_deg, angle);
    }
    const std::span<const SeenForces> seen = way.forces.seen();
    const std::size_t behind = std::min(way.forces.before(last_deg) + 1, seen.size() - 1);
    way.from_deg = seen[way.forces.before(first_deg)].angle_deg;
    way.to_deg = seen[behind].angle_deg;
    ways_.push_back(std::move(way));
}

bool Opening::open() {
    bool further = false;
    for (std::size_t i = 0; i < ways_.size(); ++i) {
        // Once all others change nothing, neither does the one that changed it last.
        if (!further && i == last_to_set_) return false;
        if (!go_over(ways_[i])) continue;
        further = true;
        last_to_set_ = i;
    }
    return further;
}

Contact Opening::contact_in(Joint& joint, const FaceShift& shift, double angle_deg) {
    set_shift(joint, fitted_.joint, shift);
    ++contacts_;
    return contact_at(joint, angle_deg);
}

double Opening::far_mm(const FaceShift& shift) const {
    return shift.at_mm(fitted_.joint.pad.end_mm);
}

double Opening::slight_mm() const { return std::max(kSlightMm, kSlightShare * far_mm(shift_)); }

/// By how much loads would set it further, at the pad's far edge, if they did not fall meanwhile.
double Opening::added_mm(const Loads& loads) const {
    return far_mm(plastic_.shift_after(loads)) - far_mm(shift_);
}

/// Forces at the turns of a way by now: as if what touches stayed in its place.
void Opening::refresh_about(Way& way) const {
    const std::span<SeenForces> seen = way.forces.seen();
    const std::size_t first = way.forces.before(way.from_deg), last = way.forces.before(way.to_deg);
    const std::size_t begin = first > 0 ? first - 1 : 0, end = std::min(last + 3, seen.size());
    for (SeenForces& each : seen.subspan(begin, end - begin)) {
        if (each.set.slope == shift_.slope && each.set.height_mm == shift_.height_mm) continue;
        lessen(fitted_.joint.flexibility, each.loads, moved(shift_, -1.0, each.set));
        each.set = shift_;
    }
}

/// Where the spring would be set most; looked for where it is bent nearly as far as it bears.
std::optional<Opening::Stop> Opening::next_stop(Way& way) {
    refresh_about(way);
    const double nearly = 1.0 - kNearly * (way.beyond - 1.0);
    double most_mm = 0.0, most_deg = 0.0;
    double from = way.to_deg, to = way.from_deg;
    const double apart = (way.to_deg - way.from_deg) / (kLooks - 1);
    for (int i = 0; i < kLooks; ++i) {
        const double angle = i + 1 < kLooks ? way.from_deg + i * apart : way.to_deg;
        const Loads loads = way.forces.at(angle);
        const double beyond = plastic_.beyond_elastic(loads);
        if (beyond < nearly) continue;
        from = std::min(from, angle);
        to = std::max(to, angle);
        const double added = beyond > 1.0 ? added_mm(loads) : 0.0;
        if (added > most_mm) most_mm = added, most_deg = angle;
    }
    if (from > to) return std::nullopt;
    way.from_deg = std::max(way.from_deg, from - apart);
    way.to_deg = std::min(way.to_deg, to + apart);
    if (most_mm <= slight_mm()) return std::nullopt;
    return Stop{most_deg};
}

bool Opening::go_over(Way& way) {
    bool further = false;
    if (!std::exchange(way.gone_over, true)) {
        further = stop_in_turn(way);
        if (!further) return false;
    }
    std::optional<Stop> stop = next_stop(way);
    int in_vain = 0;
    for (int bends = 0; stop && bends < kMostBends && in_vain < kMostInVain; ++bends) {
        const Setting setting = held_at(*stop, shift_, {}).setting;
        const bool set = bend(setting);
        in_vain += set ? 0 : 1;
        further = set || further;
        way.forces.take_in({stop->angle_deg, setting.loads, shift_});
        stop = next_stop(way);
    }
    return further;
}

}  // namespace backspring
