#include "opening.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/root.hpp"

namespace backspring {
namespace {

constexpr double kElasticAgain = 1e-6;
constexpr double kAgreedShare = 1e-8;
constexpr double kAgreedMm = 1e-7;

std::vector<Load> scaled(std::span<const Load> pattern, double force_n) {
    std::vector<Load> loads(pattern.begin(), pattern.end());
    for (Load& load : loads) load.force_n *= force_n;
    return loads;
}

/// Force of all blades at this end.
double total_n(const Contact& contact) {
    double total = contact.force_n;
    for (const Touch& touch : contact.others.beside) total += touch.force_n;
    return total;
}

std::vector<Load> pattern_of(const Contact& contact) {
    return scaled(loads_ahead(contact), 1.0 / total_n(contact));
}

/// How far two patterns differ, in place and share.
double apart_mm(const std::vector<Load>& a, const std::vector<Load>& b) {
    if (a.size() != b.size()) return 1e9;
    double apart = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        apart = std::max(apart, std::abs(a[i].x_mm - b[i].x_mm));
        apart = std::max(apart, std::abs(a[i].force_n - b[i].force_n) * a[i].x_mm);
    }
    return apart;
}

/// A pattern part of the way to another with as many touches; else the other.
std::vector<Load> between(const std::vector<Load>& a, const std::vector<Load>& b, double way) {
    if (a.size() != b.size()) return b;
    std::vector<Load> pattern;
    for (std::size_t i = 0; i < a.size(); ++i) {
        pattern.push_back(
            {std::lerp(a[i].x_mm, b[i].x_mm, way), std::lerp(a[i].force_n, b[i].force_n, way)});
    }
    return pattern;
}

MomentLine line_of(std::span<const Load> loads, double ahead_mm) {
    MomentLine line{.ahead_mm = ahead_mm};
    for (const Load& load : loads) {
        line.root_nmm += load.force_n * load.x_mm;
        line.ahead_nmm += load.force_n * std::max(load.x_mm - ahead_mm, 0.0);
    }
    return line;
}

/// Where the excess vanishes that falls from all at no force to less than nothing at all; beyond
/// the force at which the spring begins to fold it falls to a thousandth of itself in no time.
double agreed_n(FunctionRef excess, double folding_n, double all_n, double at_all) {
    if (!(folding_n < all_n)) return find_root(excess, 0.0, all_n, all_n, at_all);
    const double at_fold = excess(folding_n);
    if (at_fold <= 0.0) return find_root(excess, 0.0, folding_n, all_n, at_fold);
    for (double beyond = 1e-7; beyond < 0.1; beyond *= 100.0) {
        const double force = folding_n * (1.0 + beyond);
        if (!(force < all_n)) break;
        const double there = excess(force);
        if (there < 0.0) return find_root(excess, folding_n, force, at_fold, there);
    }
    return find_root(excess, folding_n, all_n, at_fold, at_all);
}

}  // namespace

Opening::Opening(const Joint& joint, PlasticSpring plastic)
    : joint_(joint), moved_(joint), held_(joint), plastic_(std::move(plastic)) {}

bool Opening::pass(double blade_angle_deg) {
    const Contact start = contact_at(moved_, blade_angle_deg);
    if (total_n(start) == 0.0) return false;
    const double share = plastic_.elastic_share(scaled(pattern_of(start), total_n(start)));
    if (share >= 1.0 - kElasticAgain) return false;
    if (!joint_.alone()) held_ = with_others_held(joint_, start);
    if (!settle_quickly(start, share)) settle_surely(start);
    return true;
}

bool Opening::surely_elastic(const Contact& contact) const {
    // A touch loses the share of its force that the set is of the spring's rise there; where it
    // touches moves a little too, which the slack is for.
    constexpr double slack = 0.004, slack_of_loss = 0.1;
    if (!contact.others.beside.empty()) return false;
    if (contact.count != 1) return contact.count == 0;
    const Touch& touch = contact.touches[0];
    const bool at_edge = touch.x_mm == joint_.pad.start_mm || touch.x_mm == joint_.pad.end_mm;
    if (at_edge) return false;
    const double rise = touch.height_mm - joint_.face_mm - joint_.face_slope * touch.x_mm;
    const double loss = shift_.at_mm(touch.x_mm) / rise;
    const double most = touch.force_n * (1.0 - loss) * (1.0 + slack + slack_of_loss * loss);
    const Load load{touch.x_mm, most};
    const MomentLine line = line_of({&load, 1}, joint_.pad.start_mm);
    return std::any_of(borne_.begin(), borne_.end(), [&](const MomentLine& borne) {
        return line.root_nmm <= borne.root_nmm && line.ahead_nmm <= borne.ahead_nmm;
    });
}

Opening::Trial Opening::attempt(const Pattern& pattern, double force_n, double angle_deg) const {
    Trial trial;
    trial.force_n = force_n;
    trial.shift = plastic_.shift_after(scaled(pattern, force_n));
    // A section about to fold sets without end: the face is then far beyond the tang.
    constexpr double folded_away = 1.0;
    if (trial.shift.slope < folded_away) {
        trial.contact = contact_at(with_shift(held_, trial.shift), angle_deg);
    }
    trial.excess_n = total_n(trial.contact) - force_n;
    return trial;
}

/// Secant steps for the force, kept in their bracket, while the places follow: quick where they
/// hardly move.
bool Opening::settle_quickly(const Contact& start, double share) {
    constexpr int most_rounds = 40;
    const double angle = start.blade_angle_deg, all = total_n(start);
    Pattern pattern = pattern_of(start);
    double low = share * all, high = all;
    double last = low, last_excess = all - low;
    double force = 0.5 * (low + high);
    for (int round = 0; round < most_rounds; ++round) {
        const Trial trial = attempt(pattern, force, angle);
        if (total_n(trial.contact) == 0.0) return false;
        Pattern next = pattern_of(trial.contact);
        const double apart = apart_mm(pattern, next);
        if (std::abs(trial.excess_n) <= kAgreedShare * all && apart <= kAgreedMm) {
            keep(pattern, trial);
            return true;
        }
        pattern = std::move(next);
        (trial.excess_n > 0.0 ? low : high) = force;
        const double step = trial.excess_n * (force - last) / (trial.excess_n - last_excess);
        last = force;
        last_excess = trial.excess_n;
        const double aim = force - step;
        force = aim >= low && aim <= high ? aim : 0.5 * (low + high);
    }
    return false;
}

/// The force at which what the tang needs is what has made the set; it falls as the set grows.
Opening::Trial Opening::agree(const Pattern& pattern, const Contact& start) const {
    const double angle = start.blade_angle_deg, all = total_n(start);
    const auto excess = [&](double force) { return attempt(pattern, force, angle).excess_n; };
    const double most = excess(all);
    if (most >= 0.0) return attempt(pattern, all, angle);
    const double force = agreed_n(excess, plastic_.folding_share(pattern), all, most);
    const Trial found = attempt(pattern, force, angle);
    // Where it folds before it makes room, what counts is how it stands before the fold.
    constexpr double before = 1.0 - 1e-12;
    return total_n(found.contact) > 0.0 ? found : attempt(pattern, before * force, angle);
}

/// The place at which a spring bent there is touched there; the pad's edges enclose it.
Opening::Pattern Opening::single_place(const Contact& start) const {
    const auto moves = [&](double x) {
        const Trial trial = agree({{x, 1.0}}, start);
        return trial.contact.count == 0 ? 0.0 : trial.contact.touches[0].x_mm - x;
    };
    const Pad& pad = joint_.pad;
    return {
        {find_root(moves, pad.start_mm, pad.end_mm, moves(pad.start_mm), moves(pad.end_mm)), 1.0}};
}

/// Nested search, for the force inside and for the places outside: slow, but it ends. The places
/// follow by themselves as a rule; a single one that does not is searched between the pad's edges.
void Opening::settle_surely(const Contact& start) {
    constexpr int most_rounds = 60;
    Pattern pattern = pattern_of(start);
    Trial found = agree(pattern, start);
    double way = 1.0, last_apart = 1e9;
    for (int round = 0; round < most_rounds && total_n(found.contact) > 0.0; ++round) {
        const Pattern next = pattern_of(found.contact);
        const double apart = apart_mm(pattern, next);
        if (apart <= kAgreedMm) return keep(pattern, found);
        if (apart > 0.7 * last_apart) way *= 0.5;
        last_apart = apart;
        pattern = between(pattern, next, way);
        found = agree(pattern, start);
    }
    if (!joint_.outline.kick && joint_.beside.empty()) {
        pattern = single_place(start);
        found = agree(pattern, start);
    }
    keep(pattern, found);
}

void Opening::keep(const Pattern& pattern, const Trial& trial) {
    const std::vector<Load> loads = scaled(pattern, trial.force_n);
    shift_ = trial.shift;
    moved_ = with_shift(joint_, shift_);
    plastic_.bend(loads);
    borne_.push_back(line_of(loads, joint_.pad.start_mm));
}

}  // namespace backspring
