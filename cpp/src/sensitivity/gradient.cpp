#include "backspring/sensitivity/gradient.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/design/dimension.hpp"
#include "figures.hpp"
#include "worst_figures.hpp"

namespace backspring {
namespace {

constexpr double kStep = 1e-5;
constexpr double kStepBeside = 2e-5;

// Corners by themselves: a design file gives them as a pair.
const std::array kCorners{
    Field{
        .key = "tang.corner_open",
        .get = [](const Design& d) -> std::optional<double> { return d.own().tang.corner_open_mm; },
        .set = [](Design& d, double value) { d.own().tang.corner_open_mm = value; }},
    Field{.key = "tang.corner_closed",
          .get = [](const Design& d) -> std::optional<double> {
              return d.own().tang.corner_closed_mm;
          },
          .set = [](Design& d, double value) { d.own().tang.corner_closed_mm = value; }}};

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
    }

    [[nodiscard]] Reading operator()(const Design& design, bool same_spring) const {
        Reading reading;
        const Flexibility flexibility = same_spring ? figures_.watched.front().joint.flexibility
                                                    : make_flexibility(design.spring);
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

/// A column of the gradient.
Eigen::ArrayXd by_dimension(const Design& design,
                            const Figures& figures,
                            const Reader& reader,
                            const Field& entry,
                            double value) {
    const double step = kStep * std::max(1.0, std::abs(value));
    const bool same_spring = !entry.key.starts_with("spring.");
    const auto read = [&](double moved) {
        Design changed = design;
        entry.set(changed, moved);
        return reader(changed, same_spring);
    };
    const Reading low = read(value - step), high = read(value + step);
    Eigen::ArrayXd column(static_cast<Eigen::Index>(figures.all.size()));
    for (std::size_t i = 0; i < figures.all.size(); ++i) {
        column[static_cast<Eigen::Index>(i)] = difference(figures.all[i], low, high) / (2.0 * step);
    }
    return column;
}

Eigen::Index place_of(const std::vector<std::string>& names, std::string_view name) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) {
        throw OutOfRange(std::string(name) + ": the design has no such result or number");
    }
    return found - names.begin();
}

/// A row that follows from another: result = value, d result = factor x d source.
void add_row(Gradient& gradient,
             const std::string& name,
             double value,
             std::string_view source,
             double factor) {
    const Eigen::Index from = place_of(gradient.figures, source), rows = gradient.value.size();
    gradient.figures.push_back(name);
    gradient.value.conservativeResize(rows + 1);
    gradient.value[rows] = value;
    gradient.derivative.conservativeResize(rows + 1, Eigen::NoChange);
    gradient.derivative.row(rows) = factor * gradient.derivative.row(from);
}

void add_to(Gradient& gradient, std::string_view dimension, double derivative) {
    const auto rows = gradient.derivative.rows();
    gradient.derivative(rows - 1, place_of(gradient.dimensions, dimension)) += derivative;
}

bool has(const Gradient& gradient, std::string_view figure) {
    return std::find(gradient.figures.begin(), gradient.figures.end(), figure) !=
           gradient.figures.end();
}

double value_of(const Gradient& gradient, std::string_view figure) {
    return gradient.value[place_of(gradient.figures, figure)];
}

void add_pull_and_margin(Gradient& gradient, const Design& design) {
    if (const auto& nick = design.own().blade.nail_nick_mm;
        nick && has(gradient, "peak_torque_nmm")) {
        const double pull = value_of(gradient, "peak_torque_nmm") / *nick;
        add_row(gradient, "peak_pull_n", pull, "peak_torque_nmm", 1.0 / *nick);
        add_to(gradient, "blade.nail_nick", -pull / *nick);
    }
    if (has(gradient, "travel_peak_stress_mpa")) {
        const double stress = value_of(gradient, "travel_peak_stress_mpa");
        const double margin = design.strength.yield_mpa.value / stress;
        add_row(gradient, "yield_margin", margin, "travel_peak_stress_mpa", -margin / stress);
        add_to(gradient, "spring.yield", 1.0 / stress);
    }
}

void set_columns(Gradient& result, const std::vector<Eigen::ArrayXd>& columns) {
    result.derivative.resize(result.value.size(), static_cast<Eigen::Index>(columns.size()));
    for (std::size_t j = 0; j < columns.size(); ++j) {
        result.derivative.col(static_cast<Eigen::Index>(j)) = columns[j];
    }
}

/// Of a blade alone: derivatives, not differences of solutions.
Gradient exact(const Design& design) {
    const Figures figures = make_figures(design);
    const Reader reader(design, figures);
    Gradient result;
    const auto rows = static_cast<Eigen::Index>(figures.all.size());
    result.value.resize(rows);
    for (Eigen::Index i = 0; i < rows; ++i) {
        const Figure& figure = figures.all[static_cast<std::size_t>(i)];
        result.figures.push_back(figure.name);
        result.value[i] = figure.value;
    }
    std::vector<Eigen::ArrayXd> columns;
    const auto add = [&](const Field& entry) {
        const std::optional<double> value = entry.get(design);
        if (!value) return;
        result.dimensions.emplace_back(entry.key);
        columns.push_back(by_dimension(design, figures, reader, entry, *value));
    };
    for (const Field& entry : dimensions()) add(entry);
    for (const Field& entry : kCorners) add(entry);
    set_columns(result, columns);
    return result;
}

/// Of a blade beside others: differences through the whole solution.
Gradient by_differences(const Design& design) {
    const WorstFigures figures(design);
    Gradient result{
        .figures = figures.names(), .dimensions = {}, .value = figures.values(), .derivative = {}};
    std::vector<Dimension> all = dimensions_of(design);
    for (const Field& corner : kCorners) all.push_back({&corner, 0});
    std::vector<Eigen::ArrayXd> columns;
    for (const Dimension& dimension : all) {
        const std::optional<double> value = dimension.value(design);
        if (!value) continue;
        const auto changed = [&](double by) {
            Design moved = design;
            dimension.set(moved, *value + by);
            return moved;
        };
        result.dimensions.push_back(key_of(dimension, design));
        columns.push_back(figures.rate(changed, kStepBeside * std::max(1.0, std::abs(*value))));
    }
    set_columns(result, columns);
    return result;
}

/// Whether contact's own gradient holds all that the design states.
bool is_plain(const Design& design) {
    return design.blades.size() == 1 && !design.friction.bends &&
           design.own().fit.stop.place == StopPlace::unstated;
}

}  // namespace

double Gradient::of(std::string_view figure, std::string_view dimension) const {
    return derivative(place_of(figures, figure), place_of(dimensions, dimension));
}

Gradient gradient(const Design& design) {
    Gradient result = is_plain(design) ? exact(design) : by_differences(design);
    add_pull_and_margin(result, design);
    return result;
}

}  // namespace backspring
