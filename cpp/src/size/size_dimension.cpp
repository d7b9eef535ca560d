#include "backspring/size/size_dimension.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "backspring/core/require.hpp"
#include "backspring/design/dimension.hpp"
#include "backspring/design/steel_ends.hpp"

namespace backspring {
namespace {

constexpr double kLeastPreloadMm = 0.02;

/// Moves what belongs to the pivot: the pads and dials of all blades on it, and the spring's end
/// when a pad goes past it.
void move_pivot(Design& design, double by_mm) {
    const double pivot = design.own().tang.pivot_mm;
    for (Blade& blade : design.blades) {
        if (blade.end != design.own().end || blade.tang.pivot_mm != pivot) continue;
        blade.tang.pivot_mm += by_mm;
        blade.pad.start_mm += by_mm;
        blade.pad.end_mm += by_mm;
        blade.fit.dial_mm += by_mm;
    }
    Profile& profile = design.spring.thickness;
    if (profile.size() > 1) {
        profile.back().x_mm = std::max(profile.back().x_mm, steel_ends(design).front_mm);
    }
}

void set_pivot(Design& design, double mm) { move_pivot(design, mm - design.own().tang.pivot_mm); }

void set_length(Design& design, double mm) {
    const double by = mm - design.own().tang.pivot_mm, pad = design.own().pad.start_mm;
    const auto stretch = [&](auto& rows) {
        for (auto& row : rows) {
            if (row.x_mm > 0.0) row.x_mm += by * std::min(row.x_mm / pad, 1.0);
        }
    };
    stretch(design.spring.thickness);
    stretch(design.spring.widths);
    stretch(design.spring.mid_line);
    move_pivot(design, by);
}

void set_thickness(Design& design, double mm) {
    const double scale = mm / thickness_mm(design.spring.thickness, 0.0);
    for (Station& station : design.spring.thickness) station.thickness_mm *= scale;
}

struct Measure {
    std::string_view key;
    double (*get)(const Design& design);
    void (*set)(Design& design, double mm);
    double least_share;
    double greatest_share;
};

double pivot(const Design& design) { return design.own().tang.pivot_mm; }

constexpr std::array kMeasures{
    Measure{"spring.thickness",
            [](const Design& d) { return thickness_mm(d.spring.thickness, 0.0); }, set_thickness,
            0.4, 2.5},
    Measure{"fit.preload", [](const Design& d) { return d.own().fit.preload_mm; },
            [](Design& d, double mm) { d.own().fit.preload_mm = mm; }, 0.4, 2.5},
    Measure{"spring.width", [](const Design& d) { return d.spring.width_mm; },
            [](Design& d, double mm) { d.spring = with_width(d.spring, mm); }, 0.4, 2.5},
    Measure{"tang.pivot", pivot, set_pivot, 0.75, 1.3},
    Measure{"spring.length", pivot, set_length, 0.75, 1.3},
};

/// The preload of a blade that the key names; it goes as the own one does.
bool is_preload_of_blade(const Design& design, std::string_view key) {
    const bool names_blade = key.starts_with("blades.");
    return names_blade && key.ends_with(".fit.preload") && find_dimension(design, key);
}

const Measure* find_measure(const Design& design, std::string_view key) {
    if (is_preload_of_blade(design, key)) key = "fit.preload";
    const auto found = std::find_if(kMeasures.begin(), kMeasures.end(),
                                    [&](const Measure& m) { return m.key == key; });
    return found == kMeasures.end() ? nullptr : &*found;
}

template <class SomeProfile>
auto station_at(SomeProfile& profile, double x_mm) {
    return std::find_if(profile.begin(), profile.end(),
                        [&](const Station& s) { return s.x_mm == x_mm; });
}

void station_rules(Requirements& rules, const Design& design, const SizeDimension& dimension) {
    if (!dimension.station_mm) return;
    if (dimension.key != "spring.thickness") {
        rules.fail(dimension.key, "has no stations: only spring.thickness has");
        return;
    }
    const Profile& profile = design.spring.thickness;
    rules.require(station_at(profile, *dimension.station_mm) != profile.end(), dimension.key, [&] {
        std::string known;
        for (const Station& s : profile) {
            known += (known.empty() ? "" : ", ") + with_unit(s.x_mm, "mm");
        }
        return "has no station at " + with_unit(*dimension.station_mm, "mm") + ", known are " +
               known;
    });
}

void bound_rules(Requirements& rules, const Design& design, const SizeDimension& dimension) {
    const auto positive = [&](const std::optional<double>& mm) {
        return !mm || rules.positive(dimension.key, *mm, 500.0, "mm");
    };
    bool good = positive(dimension.low_mm) && positive(dimension.high_mm);
    for (const double size : dimension.stock_mm) good = good && positive(size);
    if (!good) return;
    const SizeBounds bounds = size_bounds(design, dimension);
    rules.require(bounds.low_mm < bounds.high_mm, dimension.key, [&] {
        return "bounds must rise, got " + with_unit(bounds.low_mm, "mm") + " to " +
               with_unit(bounds.high_mm, "mm");
    });
}

}  // namespace

void require_dimensions(const Design& design, const std::vector<SizeDimension>& dimensions) {
    Requirements rules;
    rules.require(!dimensions.empty(), "vary",
                  [] { return std::string("must name at least one dimension"); });
    for (std::size_t i = 0; i < dimensions.size(); ++i) {
        const SizeDimension& dimension = dimensions[i];
        if (!find_measure(design, dimension.key)) {
            const bool alone = design.blades.size() == 1;
            rules.fail(dimension.key,
                       std::string("cannot be sized: known are spring.thickness, fit.preload, "
                                   "spring.width, tang.pivot, spring.length") +
                           (alone ? "" : ", and as blades.NAME.fit.preload another blade's"));
            continue;
        }
        const bool again =
            std::any_of(dimensions.begin(), dimensions.begin() + static_cast<std::ptrdiff_t>(i),
                        [&](const SizeDimension& d) {
                            return d.key == dimension.key && d.station_mm == dimension.station_mm;
                        });
        rules.require(!again, dimension.key, [] { return std::string("is given twice"); });
        station_rules(rules, design, dimension);
        if (rules.faults().empty()) bound_rules(rules, design, dimension);
    }
    rules.throw_if_any();
}

double size_of(const Design& design, const SizeDimension& dimension) {
    if (dimension.station_mm) {
        return station_at(design.spring.thickness, *dimension.station_mm)->thickness_mm;
    }
    if (is_preload_of_blade(design, dimension.key)) return *dimension_value(design, dimension.key);
    return find_measure(design, dimension.key)->get(design);
}

Design with_size(const Design& design, const SizeDimension& dimension, double mm) {
    if (is_preload_of_blade(design, dimension.key)) {
        return with_dimension(design, dimension.key, mm);
    }
    Design changed = design;
    if (dimension.station_mm) {
        station_at(changed.spring.thickness, *dimension.station_mm)->thickness_mm = mm;
    } else {
        find_measure(design, dimension.key)->set(changed, mm);
    }
    return changed;
}

SizeBounds size_bounds(const Design& design, const SizeDimension& dimension) {
    const Measure& measure = *find_measure(design, dimension.key);
    const double now = std::max(size_of(design, dimension), kLeastPreloadMm);
    return {.low_mm = dimension.low_mm.value_or(measure.least_share * now),
            .high_mm = dimension.high_mm.value_or(measure.greatest_share * now)};
}

}  // namespace backspring
