#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "backspring/design/dimension.hpp"
#include "backspring/design/joint_of.hpp"
#include "figures.hpp"
#include "gradient_parts.hpp"

namespace backspring {
namespace {

constexpr double kStep = 1e-5;
constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

/// What differences are taken of: the elements of each watched contact, stress per moment.
struct Reading {
    std::vector<Elements> elements;
    double stress_per_moment = 0.0;
    double worst_mm = 0.0;  ///< where that is
};

/// Where the worst place goes when a hole it lies in grows or moves.
double carried(const Spring& from, const Spring& to, double x_mm) {
    for (std::size_t i = 0; i < from.holes.size(); ++i) {
        const Hole &old = from.holes[i], &now = to.holes[i];
        const double share = (x_mm - old.center_mm) / old.diameter_mm;
        if (std::abs(share) <= 0.5) return now.center_mm + share * now.diameter_mm;
    }
    return x_mm;
}

class Reader {
  public:
    Reader(const Design& design, const Figures& figures) : design_(design), figures_(figures) {
        for (const Figure& figure : figures.all) {
            if (figure.worst) worst_mm_ = figure.worst->x_mm;
        }
        unchanged_ = (*this)(design, true);
    }

    /// Of the design itself.
    [[nodiscard]] const Reading& unchanged() const { return unchanged_; }

    [[nodiscard]] Reading operator()(const Design& design, bool same_flexibility) const {
        Reading reading;
        const Flexibility flexibility = same_flexibility
                                            ? figures_.watched.front().joint.flexibility
                                            : make_flexibility(design);
        std::array<std::optional<Joint>, 3> joints;
        for (const Watched& watched : figures_.watched) {
            auto& joint = joints[static_cast<std::size_t>(watched.kind)];
            if (!joint) joint = make_joint(design, watched.kind, flexibility);
            reading.elements.push_back(
                read_elements(*joint, design.friction, watched.state, watched.joint.dial_mm));
        }
        if (worst_mm_) read_stress(reading, design.spring);
        return reading;
    }

  private:
    void read_stress(Reading& reading, const Spring& spring) const {
        // Behind the middle pin places move with the rear pin, so the worst is found anew.
        if (*worst_mm_ < 0.0) {
            reading.stress_per_moment = make_stress_probe(spring).behind.stress_per_moment;
            return;
        }
        reading.worst_mm = carried(design_.spring, spring, *worst_mm_);
        reading.stress_per_moment = outer_stress_per_moment(section_at(spring, reading.worst_mm));
    }

    const Design& design_;
    const Figures& figures_;
    std::optional<double> worst_mm_;
    Reading unchanged_;
};

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

ColumnRates by_reading(const Figures& figures,
                       const Reader& reader,
                       const Changed& changed,
                       const Eigen::ArrayXd& values,
                       bool same_flexibility,
                       double step) {
    const Design fallen = changed(-step), risen = changed(step);
    const Reading low = reader(fallen, same_flexibility), high = reader(risen, same_flexibility);
    const Reading& here = reader.unchanged();
    ColumnSides sides{.below = differences(figures, low, here) / step,
                      .above = differences(figures, here, high) / step};
    // Where it is smooth the difference across is the better one, and holds for both sides.
    const Eigen::ArrayXd across = differences(figures, low, high) / (2.0 * step);
    const Eigen::Array<bool, Eigen::Dynamic, 1> smooth = !sides.joined(values, step).isNaN();
    sides = {.below = smooth.select(across, sides.below),
             .above = smooth.select(across, sides.above)};
    if (!faults(fallen).empty()) sides.below.setConstant(kNone);
    if (!faults(risen).empty()) sides.above.setConstant(kNone);
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
    const Reader reader(design, figures);
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
        columns.push_back(by_reading(figures, reader, changed, result.value,
                                     !design.frame.stated() && !entry.key.starts_with("spring."),
                                     kStep * size));
        corners.replace(columns.back(), entry, changed, kStepBeside * size);
    };
    for (const Field& entry : dimensions()) add(entry);
    for (const Field& entry : corner_fields()) add(entry);
    set_columns(result, columns);
    return result;
}

}  // namespace backspring
