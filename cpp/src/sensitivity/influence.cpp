#include "backspring/sensitivity/influence.hpp"

#include <algorithm>
#include <cmath>

#include "backspring/core/error.hpp"
#include "backspring/core/require.hpp"
#include "figures.hpp"
#include "influence_beside.hpp"
#include "thinning.hpp"

namespace backspring {
namespace {

constexpr double kPassMm = 0.1;

/// What a figure makes of a little more flexibility behind a station, and as far as the next.
struct Weight {
    double x_mm;
    double a0, a1, a2, shear;
};

/// All through which a figure feels the thickness.
struct Feeler {
    std::vector<Weight> ahead;  ///< rising stations
    double root = 0.0;
    std::vector<Weight> local;  ///< shear at a touch: only x_mm and shear count
};

Feeler make_feeler(const Figures& figures, const Figure& figure) {
    using namespace element;
    Feeler feeler;
    for (const Share& share : figure.shares) {
        const Watched& watched = figures.watched[share.watched];
        if (watched.kind == JointKind::unloaded) continue;
        const Elements& e = share.per_element;
        feeler.root += e[root];
        feeler.ahead.push_back(
            {watched.joint.dial_mm, e[dial_a0], e[dial_a1], e[dial_a2], e[dial_shear]});
        for (int k = 0; k < watched.state.contact.count; ++k) {
            const auto at = [&](int number) { return e[of_touch(k, number)]; };
            const double x = watched.state.contact.touches[static_cast<std::size_t>(k)].x_mm;
            feeler.ahead.push_back(
                {x, at(element::a0), at(element::a1), at(element::a2), at(element::shear)});
            feeler.local.push_back({x, 0.0, 0.0, 0.0, at(local_shear)});
        }
    }
    std::ranges::sort(feeler.ahead, {}, &Weight::x_mm);
    for (std::size_t i = feeler.ahead.size(); i-- > 1;) {
        Weight& before = feeler.ahead[i - 1];
        const Weight& w = feeler.ahead[i];
        before.a0 += w.a0, before.a1 += w.a1, before.a2 += w.a2, before.shear += w.shear;
    }
    return feeler;
}

/// Change of the figure per mm taken off one mm of length.
double density(const Feeler& feeler, const Spring& spring, double x, const Thinned& thinned) {
    if (x < 0.0) {
        const double span = spring.support.rear_pin_mm, arm = x + span;
        return feeler.root * (arm * arm * thinned.bending + thinned.shear) / (span * span);
    }
    const auto ahead =
        std::ranges::find_if(feeler.ahead, [&](const Weight& w) { return x < w.x_mm; });
    if (ahead == feeler.ahead.end()) return 0.0;
    return (ahead->a0 + x * (ahead->a1 + x * ahead->a2)) * thinned.bending +
           ahead->shear * thinned.shear;
}

/// What acts at one place only: shear under the touches, and the worst stress.
template <class Row>
void add_local(Row row,
               const Stations& stations,
               const Design& design,
               const Figure& figure,
               const Feeler& feeler,
               double offset_rate) {
    for (const Weight& w : feeler.local) {
        stations.add(row, w.x_mm, w.shear * thinned_at(design.spring, w.x_mm, offset_rate).shear);
    }
    if (!figure.worst) return;
    const double x = figure.worst->x_mm;
    const double left = x < 0.0 ? 1.0 + x / design.spring.support.rear_pin_mm : 1.0;
    stations.add(
        row, x, figure.worst->moment_nmm * left * stress_thinned_at(design.spring, x, offset_rate));
}

/// What acts along the spring: bending and shear between the pins and the touches.
void add_along(Eigen::ArrayXXd& change,
               const Stations& stations,
               const Spring& spring,
               const std::vector<Feeler>& feelers,
               double offset_rate) {
    std::vector<double> cuts{0.0};
    for (Eigen::Index i = 0; i < stations.count(); ++i) cuts.push_back(stations.x_mm(i));
    const double end = cuts.back();
    for (const Feeler& feeler : feelers) {
        for (const Weight& w : feeler.ahead) {
            if (w.x_mm < end) cuts.push_back(w.x_mm);
        }
    }
    Eigen::ArrayXd here(change.rows());
    visit_thinned(spring, cuts, offset_rate, [&](double x, double length, const Thinned& thinned) {
        for (Eigen::Index i = 0; i < change.rows(); ++i) {
            const Feeler& feeler = feelers[static_cast<std::size_t>(i)];
            here[i] = length * density(feeler, spring, x, thinned);
        }
        stations.share_out(
            x, [&](Eigen::Index station, double share) { change.col(station) += share * here; });
    });
}

void require(GrindFace face, double spacing_mm) {
    Requirements rules;
    rules.require(face != GrindFace::pad, "face", [] {
        return std::string("must be back or belly: grinding the pad also takes preload");
    });
    rules.in_range("spacing_mm", spacing_mm, 0.05, 20.0, "mm");
    rules.throw_if_any();
}

void add_row(
    Influence& result, const std::string& name, double value, double factor, Eigen::Index from) {
    const Eigen::Index rows = result.value.size();
    result.figures.push_back(name);
    result.value.conservativeResize(rows + 1);
    result.value[rows] = value;
    result.change_per_pass.conservativeResize(rows + 1, Eigen::NoChange);
    result.change_per_pass.row(rows) = factor * result.change_per_pass.row(from);
}

void add_pull_and_margin(Influence& result, const Design& design) {
    for (Eigen::Index i = 0, rows = result.value.size(); i < rows; ++i) {
        const std::string name = result.figures[static_cast<std::size_t>(i)];
        const double value = result.value[i];
        if (name == "peak_torque_nmm" && design.own().blade.nail_nick_mm) {
            const double per_torque = 1.0 / *design.own().blade.nail_nick_mm;
            add_row(result, "peak_pull_n", per_torque * value, per_torque, i);
        }
        if (name == "travel_peak_stress_mpa") {
            const double margin = design.strength.yield_mpa.value / value;
            add_row(result, "yield_margin", margin, -margin / value, i);
        }
    }
}

/// Of a blade alone: derivatives of its contacts.
Influence exact_influence(const Design& design, GrindFace face, const Stations& stations) {
    const Figures figures = make_figures(design);
    const double offset_rate = face == GrindFace::back ? 0.5 : -0.5;
    const auto rows = static_cast<Eigen::Index>(figures.all.size());
    Influence result{.station_mm = {},
                     .figures = {},
                     .value = Eigen::ArrayXd(rows),
                     .change_per_pass = Eigen::ArrayXXd::Zero(rows, stations.count())};
    std::vector<Feeler> feelers;
    std::vector<std::string> corners;
    for (Eigen::Index i = 0; i < rows; ++i) {
        const Figure& figure = figures.all[static_cast<std::size_t>(i)];
        result.figures.push_back(figure.name);
        if (figure.at_kink) corners.push_back(figure.name);
        result.value[i] = figure.value;
        feelers.push_back(make_feeler(figures, figure));
        add_local(result.change_per_pass.row(i), stations, design, figure, feelers.back(),
                  offset_rate);
    }
    add_along(result.change_per_pass, stations, design.spring, feelers, offset_rate);
    replace_at_corners(result, corners, design, face, stations);
    return result;
}

}  // namespace

Eigen::ArrayXd Influence::of(std::string_view figure) const {
    const auto found = std::find(figures.begin(), figures.end(), figure);
    if (found == figures.end()) {
        throw OutOfRange(std::string(figure) + ": the design has no such result");
    }
    return change_per_pass.row(found - figures.begin()).transpose();
}

Influence influence(const Design& design, GrindFace face, double spacing_mm) {
    require(face, spacing_mm);
    const Stations stations = make_stations(design, face, spacing_mm);
    Influence result = design.blades.size() == 1 ? exact_influence(design, face, stations)
                                                 : influence_beside(design, face, stations);
    result.station_mm.resize(stations.count());
    for (Eigen::Index i = 0; i < stations.count(); ++i) {
        result.station_mm[i] = stations.x_mm(i);
        result.change_per_pass.col(i) *= kPassMm / stations.length_mm(i);
    }
    add_pull_and_margin(result, design);
    return result;
}

}  // namespace backspring
