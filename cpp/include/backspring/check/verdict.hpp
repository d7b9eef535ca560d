#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "backspring/action/rest.hpp"
#include "backspring/action/stroke.hpp"
#include "backspring/core/notice.hpp"
#include "backspring/design/design.hpp"
#include "backspring/strength/stress_range.hpp"

namespace backspring {

/// What a way to fail does to the knife.
enum class MarginGroup {
    holds,  ///< whether the spring and its pins carry the load
    lasts,  ///< whether they do so often enough
    wears,  ///< whether the faces that rub last
    feels,  ///< what the hand notices
};

/// A way to fail.
enum class MarginKind {
    yield,               ///< the outer fibre where it is worst stressed
    set,                 ///< the spring's own lasting bend
    strain,              ///< how far the steel is stretched for good where it yields most
    hole_edge,           ///< the edge of the middle pin's hole
    kink,                ///< a kink of the belly
    shoulder,            ///< a step of the belly
    curve,               ///< a hollow belly
    fatigue,             ///< cracks after many openings
    spring_trade,        ///< what spring makers' tables allow
    contact_pressure,    ///< the tang on the pad
    galling,             ///< tang and spring of too unlike a hardness
    middle_pin_shear,    ///< the middle pin itself
    middle_pin_bearing,  ///< its side in the spring
    middle_pin_liner,    ///< the liner there
    rear_pin_shear,      ///< the rear pin itself
    rear_pin_bearing,    ///< its side in the spring
    rear_pin_liner,      ///< the liner there
    rap,                 ///< the edge on the spring when the blade shuts
};

/// How a way to fail stands, in a word, in the order in which a maker has to know them.
enum class MarginWord {
    fails,  ///< the margin is below 1
    close,  ///< it is below 1.15, or below 1 with the bands at their unkind ends
    holds,  ///< it is more
    note,   ///< an upper limit or a rule of thumb: good to know, never a failure
};

/// A margin below this is close.
inline constexpr double kCloseMargin = 1.15;

/// A kind with its fixed name, its group, and whether it can fail at all.
struct MarginName {
    MarginKind kind;        ///< the kind
    std::string_view name;  ///< as "hole-edge"
    MarginGroup group;      ///< which group it belongs to
    bool can_fail = true;   ///< false: an upper limit or a rule of thumb
};

/// All kinds, in their order.
extern const std::array<MarginName, 18> kMarginNames;

/// The fixed name of a kind, as "hole-edge".
[[nodiscard]] std::string_view name_of(MarginKind kind);

/// One way in which a spring can fail, and how far it is from it, in numbers.
struct Margin {
    MarginKind kind = MarginKind::yield;       ///< which way
    MarginGroup group = MarginGroup::holds;    ///< what it does to the knife
    MarginWord word = MarginWord::note;        ///< how it stands
    double value = 0.0;                        ///< what the design does
    double limit = 0.0;                        ///< what it may do
    Quantity quantity = Quantity::stress;      ///< kind of number that both are
    std::optional<double> margin;              ///< limit over value; none where nothing is asked
    std::optional<double> margin_low;          ///< with the bands at their unkind ends
    std::optional<double> station_mm;          ///< where on the spring [mm]
    std::optional<double> blade_angle_deg;     ///< at which blade angle [deg]
    std::vector<Parameter> parameters;         ///< more numbers that belong to it
    std::map<std::string, std::string> names;  ///< what bears, which notch
    std::vector<std::string> sources;          ///< keys of what the limit rests on
};

/// How a margin stands; where nothing is asked of the spring it holds.
///
/// @param margin_low  with the bands at their unkind ends, where that is known
[[nodiscard]] MarginWord word_of(std::optional<double> margin, std::optional<double> margin_low);

/// What a verdict looks at, worked out before.
struct Worked {
    const Action& action;
    const Turns& travel;            ///< from closed on
    std::vector<LazyStroke>& ways;  ///< between the rests
    const Rests& rests;
    const std::vector<Stroke>& strokes;  ///< opening, in turn
    const Contact& worst;                ///< where the bending stress is largest
    StressRanges& ranges;                ///< at places of the spring
};

/// Every way in which a design can fail that its data allow to judge: what fails first, notes last,
/// the least margin first among those of one word.
///
/// Yield and set, local stress at pin holes and kinks, fatigue, pressure of corner and kick on the
/// pad, galling, pins and liners, and the edge's rap. What a design leaves out is not judged; a rap
/// is a note unless the design says what gap it wants.
[[nodiscard]] std::vector<Margin> verdict(const Design& design, const Worked& worked);

}  // namespace backspring
