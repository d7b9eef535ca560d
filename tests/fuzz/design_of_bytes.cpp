#include "design_of_bytes.hpp"

#include "backspring/design/field.hpp"
#include "first_design.hpp"

using namespace backspring;

namespace fuzz {
namespace {

constexpr std::size_t kMostChanges = 12;
constexpr std::size_t kMostRows = 64;
constexpr std::size_t kMostBlades = 2;  // three take seconds

void change_field(Bytes& bytes, Design& design) {
    const Field& field = fields()[bytes.one_of(fields().size())];
    std::vector<double> values = numbers(field, design);
    if (field.set_numbers && values.size() >= 2) {
        double& value = values[bytes.one_of(values.size())];
        value = bytes.number(value, field.least, field.greatest);
        field.set_numbers(design, values);
    } else if (field.set) {
        const double now = values.empty() ? 0.5 * (field.least + field.greatest) : values.front();
        field.set(design, bytes.number(now, field.least, field.greatest));
    }
}

/// Rows of station and number: one is changed, put in or taken out.
template <class Row>
void change_rows(Bytes& bytes, std::vector<Row>& rows, double Row::*station, double Row::*value) {
    if (rows.empty() || (bytes.flag() && rows.size() < kMostRows)) {
        Row row = rows.empty() ? Row{} : rows[bytes.one_of(rows.size())];
        row.*station += bytes.between(-10.0, 10.0);
        rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(bytes.one_of(rows.size() + 1)), row);
    }
    const std::size_t which = bytes.one_of(rows.size());
    if (bytes.one_of(8) == 0) {
        rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(which));
        return;
    }
    Row& row = rows[which];
    double& changed = bytes.flag() ? row.*station : row.*value;
    changed = bytes.number(changed, -5.0, 60.0);
}

void change_stations(Bytes& bytes, Design& design) {
    Spring& spring = design.spring;
    switch (bytes.one_of(4)) {
        case 0:
            return change_rows(bytes, spring.widths, &WidthStation::x_mm, &WidthStation::width_mm);
        case 1:
            return change_rows(bytes, spring.mid_line, &MidLinePoint::x_mm,
                               &MidLinePoint::height_mm);
        case 2:
            return change_rows(bytes, design.own().blade.edge, &BladePoint::u_mm,
                               &BladePoint::w_mm);
        default:
            return change_rows(bytes, spring.thickness, &Station::x_mm, &Station::thickness_mm);
    }
}

void change_hole(Bytes& bytes, Design& design) {
    std::vector<Hole>& holes = design.spring.holes;
    if (holes.empty() || (bytes.one_of(3) == 0 && holes.size() < kMostRows)) {
        holes.push_back({bytes.between(-40.0, 40.0), bytes.between(0.1, 3.0), 0.0});
    }
    Hole& hole = holes[bytes.one_of(holes.size())];
    double* numbers[]{&hole.center_mm, &hole.diameter_mm, &hole.offset_mm};
    double& changed = *numbers[bytes.one_of(3)];
    changed = bytes.number(changed, -2.0, 40.0);
    if (bytes.one_of(4) == 0) hole.pin = static_cast<HoleFor>(bytes.one_of(3));
}

/// Numbers that no key holds, and bands.
void change_loose_number(Bytes& bytes, Design& design) {
    Band& yield = design.strength.yield_mpa;
    Band& tensile = design.strength.tensile_mpa;
    Spring& spring = design.spring;
    double* numbers[]{&yield.value,
                      &yield.low,
                      &yield.high,
                      &tensile.value,
                      &tensile.low,
                      &tensile.high,
                      &spring.support.root_stiffness_nmm_per_rad,
                      &spring.support.rear_pin_mm,
                      &spring.elastic.youngs_modulus_mpa,
                      &design.own().fit.stop.friction,
                      &design.own().fit.stop.height_mm};
    double& changed = *numbers[bytes.one_of(std::size(numbers))];
    changed = bytes.number(changed, 0.0, 2000.0);
}

void set_tensile(Bytes& bytes, Design& design) {
    const double value = bytes.between(800.0, 2200.0);
    design.strength.tensile_mpa = {value, 0.95 * value, 1.05 * value};
    design.own().hardness_hrc = bytes.between(40.0, 62.0);
    design.hardness.spring_hrc = bytes.between(40.0, 55.0);
}

void change_kind(Bytes& bytes, Design& design) {
    switch (bytes.one_of(9)) {
        case 0:
            design.spring.support.kind = static_cast<SupportKind>(bytes.one_of(3));
            break;
        case 1:
            design.surface.finish = static_cast<Finish>(bytes.one_of(5));
            break;
        case 2:
            design.surface.hole_finish = static_cast<HoleFinish>(bytes.one_of(3));
            break;
        case 3:
            design.surface.steel = static_cast<SpringSteel>(bytes.one_of(2));
            break;
        case 4:
            design.frame.liner_metal = static_cast<LinerMetal>(bytes.one_of(5));
            break;
        case 5:
            design.own().fit.stop.place = static_cast<StopPlace>(bytes.one_of(5));
            break;
        case 6:
            design.own().end = static_cast<End>(bytes.one_of(2));
            break;
        case 7:
            design.own().stands = static_cast<Stand>(bytes.one_of(3));
            break;
        default:
            set_tensile(bytes, design);
            break;
    }
}

/// What a design may have or not: kick, half-stop, frame, tip, targets.
void change_part(Bytes& bytes, Design& design) {
    Tang& tang = design.own().tang;
    switch (bytes.one_of(7)) {
        case 0:
            tang.kick =
                Kick{bytes.between(0.5, 12.0), bytes.between(0.01, 1.5), bytes.between(0.02, 3.0)};
            break;
        case 1:
            tang.kick.reset();
            break;
        case 2:
            tang.half_stop_mm.reset();
            break;
        case 3:
            tang.half_stop_mm = tang.open_mm + bytes.between(-0.3, 0.5);
            break;
        case 4:
            design.frame.liner_thickness_mm = bytes.between(0.5, 2.0);
            design.frame.liner_height_mm = bytes.between(8.0, 20.0);
            break;
        case 5:
            design.own().blade.tip =
                BladePoint{bytes.between(20.0, 90.0), bytes.between(-9.0, 9.0)};
            design.own().blade.edge = {{9.0, -4.0}, {60.0, -4.2}, {bytes.between(50.0, 80.0), 2.0}};
            break;
        default:
            design.targets = {.pull_low_n = bytes.between(1.0, 20.0),
                              .pull_high_n = bytes.between(20.0, 40.0),
                              .yield_margin = 1.15,
                              .reading_mm = 0.0254,
                              .openings = 1e5,
                              .edge_gap_mm = 0.3};
            break;
    }
}

void change_blades(Bytes& bytes, Design& design) {
    std::vector<Blade>& blades = design.blades;
    switch (bytes.one_of(6)) {
        case 0:
            blades.clear();
            break;
        case 1:
            if (blades.size() < kMostBlades) {
                blades.push_back(bytes.flag() ? blades.front() : designs::pen(End::rear));
                blades.back().name = "blade-" + std::to_string(blades.size());
            }
            break;
        case 2:
            blades.front().name = bytes.text();
            break;
        default:
            std::rotate(blades.begin(), blades.begin() + 1, blades.end());
            break;
    }
}

void change(Bytes& bytes, Design& design) {
    switch (bytes.one_of(16)) {
        case 0:
            return change_hole(bytes, design);
        case 1:
            return change_loose_number(bytes, design);
        case 2:
            return change_kind(bytes, design);
        case 3:
            return change_blades(bytes, design);
        case 4:
        case 5:
            return change_part(bytes, design);
        case 6:
        case 7:
            return change_stations(bytes, design);
        default:
            return change_field(bytes, design);
    }
}

}  // namespace

Design design_of(Bytes& bytes) {
    Design design = first_design(bytes);
    const std::size_t changes = bytes.one_of(kMostChanges);
    for (std::size_t i = 0; i < changes && !bytes.empty() && !design.blades.empty(); ++i) {
        change(bytes, design);
    }
    return design;
}

}  // namespace fuzz
