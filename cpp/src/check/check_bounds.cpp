#include <algorithm>
#include <array>
#include <limits>
#include <optional>

#include "backspring/check/bounds.hpp"
#include "check_parts.hpp"

namespace backspring {
namespace {

using enum ResultKind;

/// A number that a part of a check always has, or may have.
template <class Part>
struct Number {
    const char* name;
    ResultKind kind;
    double Part::*always = nullptr;
    std::optional<double> Part::*maybe = nullptr;
};

constexpr Number<Position> kPositionNumbers[]{
    {.name = "blade_angle_deg", .kind = angle, .always = &Position::blade_angle_deg},
    {.name = "force_n", .kind = force, .always = &Position::force_n},
    {.name = "energy_mj", .kind = energy, .always = &Position::energy_mj},
    {.name = "torque_nmm", .kind = torque, .always = &Position::torque_nmm},
    {.name = "peak_stress_mpa", .kind = stress, .always = &Position::peak_stress_mpa},
    {.name = "peak_stress_station_mm",
     .kind = station,
     .always = &Position::peak_stress_station_mm},
    {.name = "yield_margin", .kind = margin, .maybe = &Position::yield_margin},
    {.name = "yield_margin_low", .kind = margin, .maybe = &Position::yield_margin_low},
    {.name = "reading_loaded_mm", .kind = reading, .always = &Position::reading_loaded_mm},
    {.name = "reading_loaded_low_mm", .kind = reading, .maybe = &Position::reading_loaded_low_mm},
    {.name = "reading_loaded_high_mm", .kind = reading, .maybe = &Position::reading_loaded_high_mm},
    {.name = "reading_unloaded_mm", .kind = reading, .maybe = &Position::reading_unloaded_mm}};

constexpr Number<Stroke> kStrokeNumbers[]{
    {.name = "start_torque_nmm", .kind = effort, .always = &Stroke::start_torque_nmm},
    {.name = "peak_torque_nmm", .kind = effort, .always = &Stroke::peak_torque_nmm},
    {.name = "peak_torque_angle_deg", .kind = angle, .always = &Stroke::peak_torque_angle_deg},
    {.name = "crest_angle_deg", .kind = angle, .always = &Stroke::crest_angle_deg},
    {.name = "energy_up_mj", .kind = energy, .always = &Stroke::energy_up_mj},
    {.name = "energy_released_mj", .kind = energy, .always = &Stroke::energy_released_mj},
    {.name = "snap_energy_mj", .kind = energy, .always = &Stroke::snap_energy_mj},
    {.name = "closing_peak_torque_nmm", .kind = effort, .always = &Stroke::closing_peak_torque_nmm},
    {.name = "closing_start_torque_nmm",
     .kind = effort,
     .always = &Stroke::closing_start_torque_nmm}};

constexpr Number<StrokeReport> kReportNumbers[]{
    {.name = "start_pull_n", .kind = force, .maybe = &StrokeReport::start_pull_n},
    {.name = "peak_pull_n", .kind = force, .maybe = &StrokeReport::peak_pull_n},
    {.name = "closing_start_pull_n", .kind = force, .maybe = &StrokeReport::closing_start_pull_n},
    {.name = "closing_peak_pull_n", .kind = force, .maybe = &StrokeReport::closing_peak_pull_n},
    {.name = "snap_speed_rad_per_s", .kind = speed, .maybe = &StrokeReport::snap_speed_rad_per_s},
    {.name = "tip_speed_m_per_s", .kind = speed, .maybe = &StrokeReport::tip_speed_m_per_s}};

constexpr Number<Travel> kTravelNumbers[]{
    {.name = "peak_force_n", .kind = force, .always = &Travel::peak_force_n},
    {.name = "peak_force_angle_deg", .kind = angle, .always = &Travel::peak_force_angle_deg},
    {.name = "travel_peak_stress_mpa", .kind = stress, .always = &Travel::peak_stress_mpa},
    {.name = "peak_stress_angle_deg", .kind = angle, .always = &Travel::peak_stress_angle_deg},
    {.name = "peak_stress_station_mm", .kind = station, .always = &Travel::peak_stress_station_mm},
    {.name = "yield_margin", .kind = margin, .maybe = &Travel::yield_margin},
    {.name = "yield_margin_low", .kind = margin, .maybe = &Travel::yield_margin_low},
    {.name = "yield_margin_high", .kind = margin, .maybe = &Travel::yield_margin_high}};

constexpr Number<Check> kCheckNumbers[]{
    {.name = "stiffness_n_per_mm", .kind = stiffness, .always = &Check::stiffness_n_per_mm}};

/// Takes impossible numbers out of one part after another.
class Impossible {
  public:
    explicit Impossible(const Design& design) : design_(design) {}

    template <class Part, std::size_t count>
    void take_out(Part& part, const Number<Part> (&numbers)[count]) {
        for (const Number<Part>& number : numbers) {
            if (number.maybe) {
                take_out(number, part.*number.maybe);
            } else if (!is_possible(number.kind, part.*number.always)) {
                part.*number.always = std::numeric_limits<double>::quiet_NaN();
                names.emplace_back(number.name);
            }
        }
    }

    std::vector<std::string> names;

  private:
    template <class Part>
    void take_out(const Number<Part>& number, std::optional<double>& value) {
        if (!value || is_possible(number.kind, *value)) return;
        value.reset();
        names.emplace_back(number.name);
    }

    [[nodiscard]] bool is_possible(ResultKind kind, double value) {
        auto& bounds = bounds_[static_cast<std::size_t>(kind)];
        if (!bounds) bounds = result_bounds(design_, kind);
        return is_within(*bounds, value);
    }

    const Design& design_;
    std::array<std::optional<ResultBounds>, kResultKinds> bounds_{};
};

}  // namespace

std::vector<std::string> detail::take_out_impossible(Check& check, const Design& design) {
    Impossible impossible(design);
    for (Position& position : check.positions) impossible.take_out(position, kPositionNumbers);
    for (StrokeReport& report : check.strokes) {
        impossible.take_out(report.stroke, kStrokeNumbers);
        impossible.take_out(report, kReportNumbers);
    }
    impossible.take_out(check.travel, kTravelNumbers);
    impossible.take_out(check, kCheckNumbers);
    std::sort(impossible.names.begin(), impossible.names.end());
    impossible.names.erase(std::unique(impossible.names.begin(), impossible.names.end()),
                           impossible.names.end());
    return std::move(impossible.names);
}

}  // namespace backspring
