#include "indenters.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include "along_outline.hpp"
#include "backspring/core/angle.hpp"
#include "bearing_set.hpp"
#include "newton_bearing.hpp"
#include "places.hpp"

namespace backspring {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr int kMostComings = 200;
// Less than this share of an energy is rounding.
constexpr double kStoresMore = 1e-12;
// Of the distance between pin and pivot: flats side by side that bear so near to each other may
// bear the other way round as well.
constexpr double kMostApart = 0.3;
// Nearer than this they bear in one place, and may bear about so far apart.
constexpr double kOnePlace = 1e-4;
constexpr double kApart = 0.03;

using MaybeTouch = std::optional<Touch>;

/// The spring with no other force on it.
struct FreeSpring {
    const Flexibility& flexibility;
    const Indenter& indenter;

    Answer operator()(double x) const {
        const Compliance own = compliance(flexibility, x, x);
        return {indenter.face_at_mm(x), indenter.face_slope_at(x), own.mm_per_n, own.rad_per_n};
    }
};

/// Whether the top of a kick reaches the free face anywhere.
bool in_reach(const Indenter& kick) {
    const SurfacePoint top = kick.outline.at_slope(0, 0.0);
    const double x = kick.pivot_mm + top.x_mm, r = kick.outline.radius_mm(0);
    if (x + r <= kick.pad.start_mm || x - r >= kick.pad.end_mm) return false;
    return top.y_mm > kick.face_at_mm(x) - std::abs(kick.face_slope) * r;
}

Indenter kick_of(const Mounted& tang, const Indenter& body) {
    Indenter kick = body;
    kick.outline = body.outline.of(std::span(&*tang.outline.kick, 1));
    kick.part.kick = true;
    return kick;
}

PlaceGuess guess_of(const Borne& borne) {
    const Touch& touch = borne.touch;
    const double ahead = touch.x_mm - borne.indenter->pivot_mm;
    return {touch.part.arc, touch.part.flat, touch.part.flat ? ahead : touch.slope};
}

/// Several that bore a little earlier, where they bear now. Nothing where flats side by side go
/// farther than a little: these may bear in other places as well.
std::optional<std::vector<Borne>> moved_a_little(const Flexibility& flexibility,
                                                 const std::vector<Borne>& earlier) {
    // Of the distance between pin and pivot.
    constexpr double little = 1e-4, more = 3e-2;
    std::vector<Borne> borne = earlier;
    if (borne.size() < 2 || !move_together(flexibility, borne)) return std::nullopt;
    double farthest = 0.0;
    for (std::size_t i = 0; i < borne.size(); ++i) {
        const double way = std::abs(borne[i].touch.x_mm - earlier[i].touch.x_mm);
        farthest = std::max(farthest, way / borne[i].indenter->pivot_mm);
    }
    const bool near = farthest < (flats_side_by_side(borne) ? little : more);
    return near ? std::optional(std::move(borne)) : std::nullopt;
}

double energy_nmm(const Borne& borne) {
    return 0.5 * borne.touch.force_n * borne.indenter->overlap_mm(borne.touch);
}

double energy_nmm(const std::vector<Borne>& borne) {
    double energy = 0.0;
    for (const Borne& each : borne) energy += energy_nmm(each);
    return energy;
}

/// The same with two flats of two blades elsewhere, each by a way of its own. Nothing where that
/// stores no more.
std::optional<std::vector<Borne>> elsewhere(const Flexibility& flexibility,
                                            const std::vector<Borne>& borne,
                                            std::size_t i,
                                            std::size_t j,
                                            double way_mm) {
    std::vector<Borne> other = borne;
    if (!go_along(*borne[i].indenter, way_mm, other[i].touch) ||
        !go_along(*borne[j].indenter, -way_mm, other[j].touch) ||
        !move_together(flexibility, other)) {
        return std::nullopt;
    }
    const double least = energy_nmm(borne) * (1.0 + kStoresMore);
    return energy_nmm(other) > least ? std::optional(std::move(other)) : std::nullopt;
}

/// With two flats of two blades in each other's place along the spring, which of both bears ahead;
/// or apart, where they bear in one place: along the face that both bend they share a length of it.
std::optional<std::vector<Borne>> crossed_over(const Flexibility& flexibility,
                                               const std::vector<Borne>& borne,
                                               std::size_t i,
                                               std::size_t j) {
    const Touch &a = borne[i].touch, &b = borne[j].touch;
    if (!a.part.flat || !b.part.flat || a.part.blade == b.part.blade) return std::nullopt;
    const double way = b.x_mm - a.x_mm, pivot = borne[i].indenter->pivot_mm;
    if (std::abs(way) > kMostApart * pivot) return std::nullopt;
    if (std::abs(way) > kOnePlace * pivot) return elsewhere(flexibility, borne, i, j, way);
    auto apart = elsewhere(flexibility, borne, i, j, kApart * pivot);
    return apart ? apart : elsewhere(flexibility, borne, i, j, -kApart * pivot);
}

/// With all that come to bear besides.
const std::vector<Borne>& all_of(BearingSet& set) {
    for (int round = 0; round < kMostComings && set.add_one(); ++round) set.settle();
    return set.borne();
}

/// With whichever flats ahead that store most.
std::vector<Borne> most_stored(const Flexibility& flexibility, BearingSet& set) {
    const std::vector<Borne> borne = all_of(set);
    for (std::size_t i = 1; i < borne.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            auto crossed = crossed_over(flexibility, borne, i, j);
            if (!crossed) continue;
            set.start(std::move(*crossed));
            return all_of(set);
        }
    }
    return borne;
}

}  // namespace

Compliance detail::Pushed::at(double x_mm) const { return at(beam_place(flexibility, x_mm)); }

Compliance detail::Pushed::at(const BeamPlace& place) const {
    const Compliance along = place.x_mm <= stop.push.at_mm
                                 ? push_compliance(flexibility, stop.push, place)
                                 : push_compliance(flexibility, stop.push, place.x_mm);
    const Compliance across = compliance(flexibility, place, stop.push.at_mm);
    return {.mm_per_n = force_n * (along.mm_per_n + stop.across() * across.mm_per_n),
            .rad_per_n = force_n * (along.rad_per_n + stop.across() * across.rad_per_n)};
}

double detail::Pushed::moment_nmm() const {
    return force_n * (stop.push.root_lever_mm() + stop.across() * stop.push.at_mm);
}

Indenter detail::body_of(const Mounted& tang,
                         int blade,
                         double blade_angle_deg,
                         const Pushed* pushed) {
    const double turn = radians(blade_angle_deg) - std::numbers::pi;
    return {TurnedOutline(tang.outline.body, turn),
            tang.pivot_mm,
            tang.pad,
            tang.face_mm,
            tang.face_slope,
            Part{.blade = blade},
            pushed};
}

std::optional<Indenter> detail::kick_in_reach(const Mounted& tang, const Indenter& body) {
    if (!tang.outline.kick) return std::nullopt;
    Indenter kick = kick_of(tang, body);
    return in_reach(kick) ? std::optional(kick) : std::nullopt;
}

void detail::add_indenters(std::vector<Indenter>& indenters,
                           const Mounted& tang,
                           int blade,
                           double blade_angle_deg,
                           const Pushed* pushed) {
    const Indenter body = body_of(tang, blade, blade_angle_deg, pushed);
    indenters.push_back(body);
    if (tang.outline.kick) indenters.push_back(kick_of(tang, body));
}

MaybeTouch detail::bear_alone(const Flexibility& flexibility,
                              const Indenter& indenter,
                              const PlaceGuess* guess) {
    const FreeSpring spring{flexibility, indenter};
    const Range range{0.5 * indenter.pad.start_mm, kInfinity};
    const BearingSearch search(indenter.outline, indenter.pivot_mm, range, spring);
    MaybeTouch touch;
    if (guess && guess->at_edge) touch = search.at_edge(indenter.pad, guess->place, guess->arc);
    if (!touch) {
        const bool tells = guess && !guess->at_edge;
        const MaybeTouch soon = newton_bearing(flexibility, indenter, tells ? guess : nullptr);
        touch = soon ? search.on(indenter.pad, *soon) : search.on(indenter.pad);
    }
    if (!touch || !(touch->force_n > 0.0)) return std::nullopt;
    if (!stands_in(indenter, indenter.overlap_mm(*touch))) return std::nullopt;
    touch->part = named(indenter, touch->part);
    return touch;
}

double detail::miss_at(const Flexibility& flexibility,
                       const Indenter& indenter,
                       const SurfacePoint& point) {
    const FreeSpring spring{flexibility, indenter};
    const Range range{0.5 * indenter.pad.start_mm, kInfinity};
    return BearingSearch(indenter.outline, indenter.pivot_mm, range, spring).miss_at(point);
}

std::vector<Borne> detail::bear(const Flexibility& flexibility,
                                std::span<const Indenter> indenters,
                                const std::vector<Borne>& earlier) {
    std::vector<const Indenter*> within;
    for (const Indenter& indenter : indenters) {
        if (!indenter.part.kick || in_reach(indenter)) within.push_back(&indenter);
    }
    BearingSet set(flexibility, within);
    if (const auto moved = moved_a_little(flexibility, earlier)) {
        set.start(*moved);
        return most_stored(flexibility, set);
    }
    std::optional<Borne> strongest;
    for (const Indenter* indenter : within) {
        const bool bore_alone = earlier.size() == 1 && earlier.front().indenter == indenter;
        const auto guess = bore_alone ? std::optional(guess_of(earlier.front())) : std::nullopt;
        const MaybeTouch touch = bear_alone(flexibility, *indenter, guess ? &*guess : nullptr);
        if (!touch) continue;
        const Borne borne{indenter, *touch};
        if (!strongest || energy_nmm(borne) > energy_nmm(*strongest)) strongest = borne;
    }
    if (!strongest) return {};
    // A rigid spring rests on what turns it farthest, and nothing else can reach it.
    if (within.size() == 1 || flexibility.rigid()) return {*strongest};
    set.start({*strongest});
    return most_stored(flexibility, set);
}

}  // namespace backspring
