#include "backspring/fit/blades_plan.hpp"

namespace backspring {
namespace {

constexpr double kBladeHairMm = 0.005;
constexpr double kPerMm = 0.1;

std::vector<TangFace> faces_of(const Tang& tang) {
    std::vector<TangFace> faces{TangFace::open};
    if (tang.half_stop_mm) faces.push_back(TangFace::half_stop);
    faces.push_back(TangFace::closed);
    if (tang.kick) faces.push_back(TangFace::kick);
    return faces;
}

std::vector<Readings> all_lowest(Design design, std::size_t blade, TangFace face, double off_mm) {
    FaceDepths depths;
    depths.of(face) = off_mm;
    design.blades[blade] = take_off(std::move(design.blades[blade]), depths);
    std::vector<Readings> all;
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        all.push_back(lowest_readings(seen_from(design, i)));
    }
    return all;
}

std::optional<double> rate(const std::optional<double>& off, const std::optional<double>& on) {
    if (!off || !on) return std::nullopt;
    return kPerMm * (*off - *on) / (2.0 * kBladeHairMm);
}

}  // namespace

std::vector<BladeLever> blade_levers(const Design& design) {
    std::vector<BladeLever> rows;
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        for (const TangFace face : faces_of(design.blades[i].tang)) {
            const auto off = all_lowest(design, i, face, kBladeHairMm);
            const auto on = all_lowest(design, i, face, -kBladeHairMm);
            BladeLever row{.blade = design.blades[i].name, .face = face, .moves = {}};
            for (std::size_t j = 0; j < design.blades.size(); ++j) {
                row.moves.push_back({.blade = design.blades[j].name,
                                     .half_stop_mm = rate(off[j].half_stop_mm, on[j].half_stop_mm),
                                     .closed_mm = rate(off[j].closed_mm, on[j].closed_mm)});
            }
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

}  // namespace backspring
