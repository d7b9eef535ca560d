#include "backspring/design/field.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>

#include "backspring/tang/drawn_outline.hpp"
#include "field_rows.hpp"

namespace backspring {
namespace {

constexpr double kNotGiven = std::numeric_limits<double>::quiet_NaN();

std::vector<Field> all_fields() {
    std::vector<Field> all;
    for (auto& rows :
         {steel_fields(), spring_fields(), pin_fields(), surface_fields(), tang_fields(),
          fit_fields(), frame_fields(), target_fields(), prior_fields()}) {
        all.insert(all.end(), rows.begin(), rows.end());
    }
    return all;
}

const Field* find_in(const std::vector<Field>& rows, std::string_view key) {
    const auto found =
        std::find_if(rows.begin(), rows.end(), [&](const Field& f) { return f.key == key; });
    return found == rows.end() ? nullptr : &*found;
}

/// Whether a key can hold as many numbers.
bool can_hold(const Field& field, std::size_t count) {
    if (!field.set_numbers) return !field.set || count == 1;
    if (field.form == Form::outline) return count > 0 && count % 3 == 0;
    const bool in_rows = field.form == Form::profile || field.form == Form::points;
    return in_rows ? count == 1 || (count > 0 && count % 2 == 0) : count == 2;
}

void set_given(const Field& field, Design& design, const std::vector<double>& given) {
    if (!can_hold(field, given.size())) {
        throw InvalidInput({{.key = field.key,
                             .text = "cannot hold " + std::to_string(given.size()) + " numbers"}});
    }
    if (field.set_numbers) {
        field.set_numbers(design, given);
    } else if (field.set) {
        field.set(design, given.front());
    }
}

/// The least that a design needs, so that rules see what is missing.
void forget(Design& design) {
    const Pad nowhere{.start_mm = kNotGiven, .end_mm = kNotGiven};
    design.spring.width_mm = kNotGiven;
    design.own().pad = nowhere;
    if (design.spring.support.kind == SupportKind::two_pins) {
        design.spring.support.rear_pin_mm = kNotGiven;
    }
    design.own().tang = {.pivot_mm = kNotGiven,
                         .open_mm = kNotGiven,
                         .half_stop_mm = {},
                         .closed_mm = kNotGiven,
                         .corner_open_mm = kNotGiven,
                         .corner_closed_mm = kNotGiven,
                         .front_mm = kNotGiven,
                         .round_end_mm = {},
                         .kick = {}};
    design.own().fit = {.preload_mm = kNotGiven, .dial_mm = kNotGiven};
}

/// Faces of an outline that are not given are as drawn.
void take_drawn_faces(Tang& tang, const GivenNumbers& given) {
    if (tang.outline.empty() || flaw_of(tang.outline) != OutlineFlaw::none) return;
    const DrawnFaces drawn = faces_of(arcs_of(tang.outline));
    if (!given.contains("tang.open")) tang.open_mm = drawn.open_mm;
    if (!given.contains("tang.half_stop")) tang.half_stop_mm = drawn.half_stop_mm;
    if (!given.contains("tang.closed")) tang.closed_mm = drawn.closed_mm;
    tang.corner_open_mm = tang.corner_closed_mm = tang.front_mm = 0.0;
}

}  // namespace

std::optional<double> detail::alike(const std::vector<double>& numbers) {
    const auto differs = [&](double each) { return each != numbers.front(); };
    if (numbers.empty() || std::any_of(numbers.begin(), numbers.end(), differs)) return {};
    return numbers.front();
}

const std::vector<Field>& fields() {
    static const std::vector<Field> all = all_fields();
    return all;
}

const std::vector<Field>& dimensions() {
    static const std::vector<Field> all = [] {
        std::vector<Field> some;
        std::copy_if(fields().begin(), fields().end(), std::back_inserter(some),
                     [](const Field& field) { return field.dimension; });
        return some;
    }();
    return all;
}

const Field* find_field(std::string_view key) { return find_in(fields(), key); }

const Field* find_dimension(std::string_view key) { return find_in(dimensions(), key); }

std::vector<double> numbers(const Field& field, const Design& design) {
    if (field.numbers) return field.numbers(design);
    const std::optional<double> one = field.get ? field.get(design) : std::nullopt;
    return one ? std::vector{*one} : std::vector<double>{};
}

std::optional<Fault> range_fault(const Field& field, double value) {
    const auto fault = [&](const RuleText& rule, std::vector<double> limits) {
        return broken(field.key, rule, field.quantity, std::move(limits), {value});
    };
    if (!std::isfinite(value)) return fault(rule::kFinite, {});
    if (field.least > 0.0 && value <= 0.0) return fault(rule::kGreaterThan, {0.0});
    if (value < field.least) return fault(rule::kAtLeast, {field.least});
    if (value > field.greatest) return fault(rule::kAtMost, {field.greatest});
    return {};
}

Design with_numbers(const Design& design, const GivenNumbers& given) {
    Design made = design;
    forget(made);
    for (const Field& field : fields()) {
        const auto found = given.find(field.key);
        if (found != given.end()) set_given(field, made, found->second);
    }
    take_drawn_faces(made.own().tang, given);
    if (!given.contains("fit.dial")) made.own().fit.dial_mm = made.own().tang.pivot_mm;
    return made;
}

}  // namespace backspring
