#include "opening.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "backspring/core/root.hpp"
#include "backspring/strength/plastic_set.hpp"
#include "setting_forces.hpp"

namespace backspring {
namespace {

constexpr int kMostBends = 30, kMostRounds = 40;
constexpr double kElasticAgain = 1e-6;
// A piece whose turns all bend it by less of that stays elastic between them, too.
constexpr double kHardly = 0.9;
constexpr int kLooks = 16;
constexpr double kNearly = 0.02;
// What an angle adds to the set; a dial reads a hundredth of a millimetre.
constexpr double kSlightShare = 2e-5, kSlightMm = 1e-9;
// Rounds agree to so much of the set, each being found to a tenth of that.
constexpr double kAgreedShare = 1e-7, kAgreedMm = 1e-10, kFound = 0.1;

FaceShift moved(const FaceShift& from, double way, const FaceShift& by) {
    return {from.height_mm + way * by.height_mm, from.slope + way * by.slope};
}

double dot(const FaceShift& a, const FaceShift& b, const Pad& pad) {
    return a.at_mm(pad.start_mm) * b.at_mm(pad.start_mm) +
           a.at_mm(pad.end_mm) * b.at_mm(pad.end_mm);
}

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
    const auto beyond = [&](const Turn& turn) {
        return plastic.beyond_elastic(loads_ahead(turn.contact));
    };
    std::vector<StressedWay> ways;
    for (const Piece& piece : travel.pieces()) {
        std::vector<double> all;
        all.reserve(piece.size());
        for (const Turn* turn : piece) all.push_back(beyond(*turn));
        if (*std::ranges::max_element(all) <= kHardly) continue;
        std::vector<SeenForces> seen;
        seen.reserve(piece.size());
        for (const Turn* turn : piece) {
            seen.push_back({angle_of(turn), loads_ahead(turn->contact)});
        }
        const Turn worst = largest(travel.action(), {&piece, 1}, beyond);
        ways.push_back(
            {StressedPiece(std::move(seen)), std::move(all), angle_of(&worst), beyond(worst)});
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
    Way way{stressed.worst_deg, softer * stressed.worst_beyond, stressed.forces};
    if (way.beyond <= 1.0) return;
    double first_deg = way.worst_deg, last_deg = way.worst_deg;
    for (std::size_t i = 0; i < stressed.beyond.size(); ++i) {
        if (softer * stressed.beyond[i] <= 1.0) continue;
        const double angle = way.forces.seen()[i].angle_deg;
        first_deg = std::min(first_deg, angle);
        last_deg = std::max(last_deg, angle);
    }
    find_ends(way, first_deg, last_deg);
    ways_.push_back(std::move(way));
}

/// From where to where it yields: beyond the first and the last angle where it is known to.
void Opening::find_ends(Way& way, double first_deg, double last_deg) const {
    const auto more = [&](double angle) {
        return plastic_.beyond_elastic(way.forces.at(angle)) - 1.0;
    };
    const auto end = [&](double inside, double outside) {
        const double in = more(inside), out = more(outside);
        constexpr int bits = 8;
        return in > 0.0 && out < 0.0 ? find_root(more, inside, outside, in, out, bits) : outside;
    };
    const std::span<const SeenForces> seen = way.forces.seen();
    const std::size_t behind = std::min(way.forces.before(last_deg) + 1, seen.size() - 1);
    way.from_deg = end(first_deg, seen[way.forces.before(first_deg)].angle_deg);
    way.to_deg = end(last_deg, seen[behind].angle_deg);
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

bool Opening::sets_further(const Loads& loads) const {
    return plastic_.beyond_elastic(loads) > 1.0 + kElasticAgain && added_mm(loads) > slight_mm();
}

void Opening::refresh_about(Way& way) {
    const std::span<SeenForces> seen = way.forces.seen();
    const std::size_t first = way.forces.before(way.from_deg), last = way.forces.before(way.to_deg);
    const std::size_t begin = first > 0 ? first - 1 : 0, end = std::min(last + 3, seen.size());
    std::ranges::for_each(seen.subspan(begin, end - begin), [&](SeenForces& s) { refresh(s); });
}

/// Forces at a turn by now: as if what touches stayed in its place, while it hardly moves.
void Opening::refresh(SeenForces& seen) {
    constexpr double hardly_rad = 2e-4;
    const FaceShift since = moved(shift_, -1.0, seen.set);
    if (since.slope == 0.0) return;
    if (std::abs(since.slope) <= hardly_rad) {
        lessen(fitted_.joint.flexibility, seen.loads, since);
    } else {
        seen.loads = loads_ahead(contact_in(moved_, shift_, seen.angle_deg));
    }
    seen.set = shift_;
}

/// Where the spring would be set most; looked for where it is bent nearly as far as it bears.
std::optional<Contact> Opening::next_contact(Way& way) {
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
    return contact_in(moved_, shift_, most_deg);
}

bool Opening::go_over(Way& way) {
    bool further = false;
    std::optional<Contact> contact =
        way.gone_over ? next_contact(way) : contact_in(moved_, shift_, way.worst_deg);
    const bool first = !std::exchange(way.gone_over, true);
    constexpr double hardly = 0.995;
    if (first && plastic_.beyond_elastic(loads_ahead(*contact)) < hardly) return false;
    for (int bends = 0; contact && bends < kMostBends; ++bends) {
        Loads loads = loads_ahead(*contact);
        if (sets_further(loads)) {
            loads = settle(*contact);
            further = true;
        }
        way.forces.take_in({contact->blade_angle_deg, loads, shift_});
        contact = next_contact(way);
    }
    return further;
}

/// Forces by the set, and places by the contact, in turn: a round's way is stretched by what the
/// round before left over.
///
/// @source B. M. Irons and R. C. Tuck, IJNME 1 (1969), a version of Aitken's accelerator
Loads Opening::settle(Contact contact) {
    const double angle = contact.blade_angle_deg;
    const Pad& pad = fitted_.joint.pad;
    std::optional<Joint> held;
    if (!fitted_.joint.alone()) held = with_others_held(fitted_.joint, contact);
    Joint& joint = held ? *held : moved_;
    FaceShift shift = shift_, miss;
    Setting by_now;
    double way = 1.0;
    for (int round = 0; round < kMostRounds; ++round) {
        const FaceShift last = miss;
        const double enough = kFound * (kAgreedMm + kAgreedShare * far_mm(shift));
        by_now = setting_forces(plastic_, joint.flexibility, loads_ahead(contact), shift,
                                by_now.loads, enough);
        miss = moved(by_now.set, -1.0, shift);
        if (std::sqrt(dot(miss, miss, pad)) <= kAgreedMm + kAgreedShare * far_mm(by_now.set)) break;
        if (round > 0) {
            const FaceShift change = moved(miss, -1.0, last);
            const double changed = dot(change, change, pad);
            if (changed > 0.0) way = std::clamp(-way * dot(last, change, pad) / changed, 0.05, 2.0);
        }
        FaceShift next = moved(shift, way, miss);
        contact = contact_in(joint, next, angle);
        for (; loads_ahead(contact).size() == 0 && round < kMostRounds; ++round) {
            next = moved(shift, 0.5, moved(next, -1.0, shift));
            contact = contact_in(joint, next, angle);
        }
        shift = next;
    }
    plastic_.bend(by_now.loads);
    shift_ = by_now.set;
    return by_now.loads;
}

}  // namespace backspring
