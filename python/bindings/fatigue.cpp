#include "backspring/strength/fatigue.hpp"

#include "backspring/strength/sn_line.hpp"
#include "backspring/strength/stress_range.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

void define_endurance(py::module_& m) {
    m.def("surface_factor", &surface_factor, py::arg("finish"), py::arg("tensile_mpa"),
          DOC(surface_factor));
    m.def("wall_finish", &wall_finish, py::arg("finish"), DOC(wall_finish));
    m.attr("SOFT_SKIN_SHARE") = kSoftSkinShare;
    m.def("equivalent_diameter_mm", &equivalent_diameter_mm, py::arg("width_mm"),
          py::arg("thickness_mm"), DOC(equivalent_diameter_mm));
    m.def("size_factor", &size_factor, py::arg("diameter_mm"), DOC(size_factor));
    m.def("loading_factor", &loading_factor, py::arg("loading"), DOC(loading_factor));
    m.def("temperature_factor", &temperature_factor, py::arg("temperature_c"),
          DOC(temperature_factor));
    m.def("reliability_factor", &reliability_factor, py::arg("reliability"),
          DOC(reliability_factor));
    m.def("design_endurance_mpa", &design_endurance_mpa, py::arg("tensile_mpa"),
          DOC(design_endurance_mpa));
    m.def("mean_endurance_mpa", &mean_endurance_mpa, py::arg("tensile_mpa"),
          DOC(mean_endurance_mpa));
    auto factors = declared<EnduranceFactors>();
    define_record(factors, BACKSPRING_FIELD(EnduranceFactors, surface),
                  BACKSPRING_FIELD(EnduranceFactors, size),
                  BACKSPRING_FIELD(EnduranceFactors, loading),
                  BACKSPRING_FIELD(EnduranceFactors, temperature),
                  BACKSPRING_FIELD(EnduranceFactors, reliability));
}

void define_mean_stress(py::module_& m) {
    auto cycle = declared<StressCycle>();
    define_record(cycle, BACKSPRING_FIELD(StressCycle, amplitude_mpa),
                  BACKSPRING_FIELD(StressCycle, mean_mpa));
    auto strength = declared<FatigueStrength>();
    define_record(strength, BACKSPRING_FIELD(FatigueStrength, reversed_mpa),
                  BACKSPRING_FIELD(FatigueStrength, tensile_mpa),
                  BACKSPRING_FIELD(FatigueStrength, yield_mpa));
    m.def("cycle_between", &cycle_between, py::arg("min_mpa"), py::arg("max_mpa"),
          DOC(cycle_between));
    m.def("walker_exponent", &walker_exponent, py::arg("tensile_mpa"), DOC(walker_exponent));
    m.def("safety_factor", &safety_factor, py::arg("criterion"), py::arg("cycle"),
          py::arg("strength"), py::arg("residual_mpa") = 0.0, DOC(safety_factor));
    m.def("with_residual", &with_residual, py::arg("cycle"), py::arg("residual_mpa"),
          DOC(with_residual));
    m.def("tells_life", &tells_life, py::arg("criterion"), DOC(tells_life));
    m.def("reversed_stress_mpa", &reversed_stress_mpa, py::arg("criterion"), py::arg("cycle"),
          py::arg("strength"), DOC(reversed_stress_mpa));
    m.def("first_yield_factor", &first_yield_factor, py::arg("cycle"), py::arg("yield_mpa"),
          DOC(first_yield_factor));
}

void define_life(py::module_& m) {
    auto line = declared<SnLine>();
    define_fields(line, BACKSPRING_FIELD(SnLine, tensile_mpa),
                  BACKSPRING_FIELD(SnLine, share_at_thousand),
                  BACKSPRING_FIELD(SnLine, endurance_mpa));
    m.def("share_at_thousand", &share_at_thousand, py::arg("tensile_mpa"), DOC(share_at_thousand));
    m.def("make_sn_line", &make_sn_line, py::arg("tensile_mpa"), py::arg("share_at_thousand"),
          py::arg("endurance_mpa"), DOC(make_sn_line));
    m.def("fatigue_strength_mpa", &fatigue_strength_mpa, py::arg("line"), py::arg("cycles"),
          DOC(fatigue_strength_mpa));
    m.def("cycles_to_failure", &cycles_to_failure, py::arg("line"), py::arg("reversed_mpa"),
          DOC(cycles_to_failure));
    auto allowable = declared<SpringAllowable>();
    define_record(allowable, BACKSPRING_FIELD(SpringAllowable, stated_for),
                  BACKSPRING_FIELD(SpringAllowable, fraction),
                  BACKSPRING_FIELD(SpringAllowable, source),
                  BACKSPRING_FIELD(SpringAllowable, confidence));
    m.def("spring_allowables", &spring_allowables, py::arg("steel"), py::arg("cycles"),
          DOC(spring_allowables));
}

void define_results() {
    auto range = declared<StressRange>();
    define_record(range, BACKSPRING_FIELD(StressRange, low_mpa),
                  BACKSPRING_FIELD(StressRange, high_mpa));
    auto margin = declared<FatigueMargin>();
    define_record(margin, BACKSPRING_FIELD(FatigueMargin, criterion),
                  BACKSPRING_FIELD(FatigueMargin, margin));
    auto trade = declared<TradeMargin>();
    define_record(trade, BACKSPRING_FIELD(TradeMargin, allowable),
                  BACKSPRING_FIELD(TradeMargin, margin));
    auto life = declared<LifeBand>();
    define_record(life, BACKSPRING_FIELD(LifeBand, value), BACKSPRING_FIELD(LifeBand, low),
                  BACKSPRING_FIELD(LifeBand, high), BACKSPRING_FIELD(LifeBand, typical));
    auto found = declared<Fatigue>();
    define_record(found, BACKSPRING_FIELD(Fatigue, cycle), BACKSPRING_FIELD(Fatigue, factors),
                  BACKSPRING_FIELD(Fatigue, endurance_mpa), BACKSPRING_FIELD(Fatigue, strength_mpa),
                  BACKSPRING_FIELD(Fatigue, cycles_per_opening),
                  BACKSPRING_FIELD(Fatigue, wanted_cycles), BACKSPRING_FIELD(Fatigue, margins),
                  BACKSPRING_FIELD(Fatigue, first_yield), BACKSPRING_FIELD(Fatigue, trade),
                  BACKSPRING_FIELD(Fatigue, life_openings));
}

}  // namespace

void declare_fatigue(py::module_& m) {
    py::native_enum<Finish>(m, "Finish", "enum.Enum", DOC(Finish))
        .value("polished", Finish::polished, DOC(Finish_polished))
        .value("ground", Finish::ground, DOC(Finish_ground))
        .value("machined", Finish::machined, DOC(Finish_machined))
        .value("hot_rolled", Finish::hot_rolled, DOC(Finish_hot_rolled))
        .value("as_forged", Finish::as_forged, DOC(Finish_as_forged))
        .finalize();
    py::native_enum<HoleFinish>(m, "HoleFinish", "enum.Enum", DOC(HoleFinish))
        .value("drilled", HoleFinish::drilled, DOC(HoleFinish_drilled))
        .value("reamed", HoleFinish::reamed, DOC(HoleFinish_reamed))
        .value("polished", HoleFinish::polished, DOC(HoleFinish_polished))
        .finalize();
    py::native_enum<Loading>(m, "Loading", "enum.Enum", DOC(Loading))
        .value("bending", Loading::bending, DOC(Loading_bending))
        .value("axial", Loading::axial, DOC(Loading_axial))
        .value("torsion", Loading::torsion, DOC(Loading_torsion))
        .finalize();
    py::native_enum<Criterion>(m, "Criterion", "enum.Enum", DOC(Criterion))
        .value("goodman", Criterion::goodman, DOC(Criterion_goodman))
        .value("gerber", Criterion::gerber, DOC(Criterion_gerber))
        .value("elliptic", Criterion::elliptic, DOC(Criterion_elliptic))
        .value("swt", Criterion::swt, DOC(Criterion_swt))
        .value("walker", Criterion::walker, DOC(Criterion_walker))
        .finalize();
    py::native_enum<SpringSteel>(m, "SpringSteel", "enum.Enum", DOC(SpringSteel))
        .value("carbon", SpringSteel::carbon, DOC(SpringSteel_carbon))
        .value("stainless", SpringSteel::stainless, DOC(SpringSteel_stainless))
        .finalize();
    py::class_<EnduranceFactors>(m, "EnduranceFactors", DOC(EnduranceFactors));
    py::class_<StressCycle>(m, "StressCycle", DOC(StressCycle));
    py::class_<FatigueStrength>(m, "FatigueStrength", DOC(FatigueStrength));
    py::class_<SnLine>(m, "SnLine", DOC(SnLine));
    py::class_<SpringAllowable>(m, "SpringAllowable", DOC(SpringAllowable));
    py::class_<StressRange>(m, "StressRange", DOC(StressRange));
    py::class_<FatigueInput>(m, "FatigueInput", DOC(FatigueInput));
    py::class_<FatigueMargin>(m, "FatigueMargin", DOC(FatigueMargin));
    py::class_<TradeMargin>(m, "TradeMargin", DOC(TradeMargin));
    py::class_<LifeBand>(m, "LifeBand", DOC(LifeBand));
    py::class_<Fatigue>(m, "Fatigue", DOC(Fatigue));
}

void define_fatigue(py::module_& m) {
    define_endurance(m);
    define_mean_stress(m);
    define_life(m);
    define_results();
    auto input = declared<FatigueInput>();
    define_record(
        input, BACKSPRING_FIELD(FatigueInput, stress_max_mpa),
        BACKSPRING_FIELD(FatigueInput, stress_min_mpa), BACKSPRING_FIELD(FatigueInput, tensile_mpa),
        BACKSPRING_FIELD(FatigueInput, yield_mpa), BACKSPRING_FIELD(FatigueInput, finish),
        BACKSPRING_FIELD(FatigueInput, residual_mpa), BACKSPRING_FIELD(FatigueInput, soft_skin),
        BACKSPRING_FIELD(FatigueInput, width_mm), BACKSPRING_FIELD(FatigueInput, thickness_mm),
        BACKSPRING_FIELD(FatigueInput, notch_factor), BACKSPRING_FIELD(FatigueInput, reliability),
        BACKSPRING_FIELD(FatigueInput, temperature_c), BACKSPRING_FIELD(FatigueInput, openings),
        BACKSPRING_FIELD(FatigueInput, strokes), BACKSPRING_FIELD(FatigueInput, steel));
    m.def("fatigue", &fatigue, py::arg("input"), DOC(fatigue));
}

}  // namespace backspring::python
