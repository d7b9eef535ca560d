#include <algorithm>
#include <cmath>
#include <limits>

#include "backspring/design/dimension.hpp"
#include "element_reader.hpp"
#include "gradient_parts.hpp"

namespace backspring {
namespace {

constexpr double kStep = 1e-5;
constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

double difference(const Figure& figure, const Reading& low, const Reading& high) {
    double sum = 0.0;
    for (const Share& share : figure.shares) {
        const Elements change = high.elements[share.watched] - low.elements[share.watched];
        sum += (share.per_element * change).sum();
    }
    if (figure.worst) {
        const WorstPlace& worst = *figure.worst;
        const double mean = 0.5 * (high.stress_per_moment + low.stress_per_moment);
        sum += worst.moment_nmm * (high.stress_per_moment - low.stress_per_moment) -
               worst.force_n * mean * (high.worst_mm - low.worst_mm);
    }
    return sum;
}

Eigen::ArrayXd differences(const Figures& figures, const Reading& low, const Reading& high) {
    Eigen::ArrayXd column(static_cast<Eigen::Index>(figures.all.size()));
    for (std::size_t i = 0; i < figures.all.size(); ++i) {
        column[static_cast<Eigen::Index>(i)] = difference(figures.all[i], low, high);
    }
    return column;
}

/// The design a step down and a step up.
struct Changes {
    Design fallen, risen;

    void set(const Design& design, const Field& entry, double value, double step) {
        fallen = risen = design;
        entry.set(fallen, value - step);
        entry.set(risen, value + step);
    }
};

ColumnRates by_reading(const Figures& figures,
                       const ElementReader& reader,
                       const Changes& changes,
                       const Eigen::ArrayXd& values,
                       std::string_view key,
                       Moves moves,
                       double step) {
    const auto& [fallen, risen] = changes;
    const Reading low = reader(fallen, moves), high = reader(risen, moves);
    const Reading& here = reader.unchanged();
    ColumnSides sides{.below = differences(figures, low, here) / step,
                      .above = differences(figures, here, high) / step};
    // Where it is smooth the difference across, their mean, is the better one for both sides.
    Eigen::ArrayXd across = sides.joined(values, step);
    for (Eigen::Index i = 0; i < across.size(); ++i) {
        if (!std::isnan(across[i])) sides.below[i] = sides.above[i] = across[i];
    }
    const bool falls = faults_of_change(fallen, key).empty();
    const bool rises = faults_of_change(risen, key).empty();
    if (falls && rises) {
        return {std::move(across), std::move(sides.below), std::move(sides.above)};
    }
    if (!falls) sides.below.setConstant(kNone);
    if (!rises) sides.above.setConstant(kNone);
    return joined_rates(sides, values, step);
}

/// Whether a number moves a face of a drawn tang: edges of its outline then come and go, and none
/// can be followed.
bool recuts_outline(const Design& design, std::string_view key) {
    return !design.own().tang.outline.empty() &&
           (key == "tang.open" || key == "tang.half_stop" || key == "tang.closed");
}

/// Results differenced through whole solutions: those whose peak is a corner, and all where the
/// outline is cut anew.
class Corners {
  public:
    Corners(const Design& design, const Figures& figures) : design_(design) {
        for (const Figure& figure : figures.all) at_kink_.push_back(figure.at_kink);
        const bool any = std::ranges::find(at_kink_, true) != at_kink_.end();
        if (!any && design.own().tang.outline.empty()) return;
        whole_.emplace(design);
        for (const Figure& figure : figures.all) places_.push_back(whole_->place(figure.name));
    }

    void replace(ColumnRates& rates,
                 const Field& entry,
                 const Changed& changed,
                 double step) const {
        const bool every = recuts_outline(design_, entry.key);
        if (!every && std::ranges::find(at_kink_, true) == at_kink_.end()) return;
        const ColumnRates own = joined_rates(whole_->sides(changed, step), whole_->values(), step);
        for (std::size_t i = 0; i < at_kink_.size(); ++i) {
            if (!every && !at_kink_[i]) continue;
            const auto row = static_cast<Eigen::Index>(i);
            rates.joined[row] = own.joined[places_[i]];
            rates.below[row] = own.below[places_[i]];
            rates.above[row] = own.above[places_[i]];
        }
    }

  private:
    const Design& design_;
    std::vector<bool> at_kink_;
    std::vector<Eigen::Index> places_;
    std::optional<WorstFigures> whole_;
};

/// An outline's corners are part of its shape.
std::optional<double> corner(const Design& design, double radius_mm) {
    return design.own().tang.outline.empty() ? std::optional(radius_mm) : std::nullopt;
}

}  // namespace

ColumnRates detail::joined_rates(const ColumnSides& sides,
                                 const Eigen::ArrayXd& values,
                                 double step) {
    return {sides.joined(values, step), sides.below, sides.above};
}

const std::vector<Field>& detail::corner_fields() {
    static const std::vector<Field> fields{
        Field{.key = "tang.corner_open",
              .get = [](const Design& d) { return corner(d, d.own().tang.corner_open_mm); },
              .set = [](Design& d, double value) { d.own().tang.corner_open_mm = value; }},
        Field{.key = "tang.corner_closed",
              .get = [](const Design& d) { return corner(d, d.own().tang.corner_closed_mm); },
              .set = [](Design& d, double value) { d.own().tang.corner_closed_mm = value; }}};
    return fields;
}

void detail::set_columns(Gradient& result, const std::vector<ColumnRates>& columns) {
    const auto rows = result.value.size(), count = static_cast<Eigen::Index>(columns.size());
    for (Eigen::ArrayXXd* part : {&result.derivative, &result.below, &result.above}) {
        part->resize(rows, count);
    }
    for (Eigen::Index j = 0; j < count; ++j) {
        const ColumnRates& rates = columns[static_cast<std::size_t>(j)];
        result.derivative.col(j) = rates.joined;
        result.below.col(j) = rates.below;
        result.above.col(j) = rates.above;
    }
}

Gradient detail::exact_gradient(const Design& design) {
    const Figures figures = make_figures(design);
    const ElementReader reader(design, figures);
    const Corners corners(design, figures);
    Gradient result;
    const auto rows = static_cast<Eigen::Index>(figures.all.size());
    result.value.resize(rows);
    for (Eigen::Index i = 0; i < rows; ++i) {
        const Figure& figure = figures.all[static_cast<std::size_t>(i)];
        result.figures.push_back(figure.name);
        result.value[i] = figure.value;
    }
    std::vector<ColumnRates> columns;
    Changes changes;
    const auto add = [&](const Field& entry) {
        const std::optional<double> value = entry.get(design);
        if (!value) return;
        const double size = std::max(1.0, std::abs(*value));
        const Changed changed = [&](double by) {
            Design moved = design;
            entry.set(moved, *value + by);
            return moved;
        };
        result.dimensions.emplace_back(entry.key);
        changes.set(design, entry, *value, kStep * size);
        columns.push_back(by_reading(figures, reader, changes, result.value, entry.key,
                                     moves_of(design, entry.key), kStep * size));
        corners.replace(columns.back(), entry, changed, kStepBeside * size);
    };
    for (const Field& entry : dimensions()) add(entry);
    for (const Field& entry : corner_fields()) add(entry);
    set_columns(result, columns);
    return result;
}

}  // namespace backspring
