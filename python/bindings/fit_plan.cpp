#include "backspring/fit/blades_plan.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

void define_rules() {
    auto measured = declared<Measured>();
    define_record(measured, BACKSPRING_FIELD(Measured, state),
                  BACKSPRING_FIELD(Measured, half_stop_mm), BACKSPRING_FIELD(Measured, closed_mm));
    auto material = declared<Material>();
    define_record(material, BACKSPRING_FIELD(Material, open_mm),
                  BACKSPRING_FIELD(Material, half_stop_mm), BACKSPRING_FIELD(Material, closed_mm),
                  BACKSPRING_FIELD(Material, kick_mm));
    auto rules = declared<PlanRules>();
    define_record(rules, BACKSPRING_FIELD(PlanRules, target_mm),
                  BACKSPRING_FIELD(PlanRules, repeatability_mm),
                  BACKSPRING_FIELD(PlanRules, least_off_mm), BACKSPRING_FIELD(PlanRules, reserve),
                  BACKSPRING_FIELD(PlanRules, closed_by), BACKSPRING_FIELD(PlanRules, tip_mm),
                  BACKSPRING_FIELD(PlanRules, tip_allowance_mm),
                  BACKSPRING_FIELD(PlanRules, material), BACKSPRING_FIELD(PlanRules, spares_open));
}

void define_blades_plan() {
    auto fitted = declared<FittedBlade>();
    define_record(fitted, BACKSPRING_FIELD(FittedBlade, blade),
                  BACKSPRING_FIELD(FittedBlade, unknowns));
    auto measured = declared<BladeMeasured>();
    define_record(measured, BACKSPRING_FIELD(BladeMeasured, blade),
                  BACKSPRING_FIELD(BladeMeasured, measured),
                  BACKSPRING_FIELD(BladeMeasured, unknowns));
    auto plan = declared<BladesPlan>();
    define_record(plan, BACKSPRING_FIELD(BladesPlan, blades), BACKSPRING_FIELD(BladesPlan, steps),
                  BACKSPRING_FIELD(BladesPlan, passes), BACKSPRING_FIELD(BladesPlan, aim_mm),
                  BACKSPRING_FIELD(BladesPlan, now), BACKSPRING_FIELD(BladesPlan, done));
    auto moves = declared<BladeMoves>();
    define_record(moves, BACKSPRING_FIELD(BladeMoves, blade),
                  BACKSPRING_FIELD(BladeMoves, half_stop_mm),
                  BACKSPRING_FIELD(BladeMoves, closed_mm));
    auto lever = declared<BladeLever>();
    define_record(lever, BACKSPRING_FIELD(BladeLever, blade), BACKSPRING_FIELD(BladeLever, face),
                  BACKSPRING_FIELD(BladeLever, moves));
}

}  // namespace

void declare_fit_plan(py::module_& m) {
    py::native_enum<ClosedGrind>(m, "ClosedGrind", "enum.Enum", DOC(ClosedGrind))
        .value("level", ClosedGrind::level)
        .value("least", ClosedGrind::least)
        .value("closed", ClosedGrind::closed)
        .value("kick", ClosedGrind::kick)
        .finalize();
    py::class_<Measured>(m, "Measured", DOC(Measured));
    py::class_<Material>(m, "Material", DOC(Material));
    py::class_<PlanRules>(m, "PlanRules", DOC(PlanRules));
    py::class_<FitStep>(m, "FitStep", DOC(FitStep));
    py::class_<FitPlan>(m, "FitPlan", DOC(FitPlan));
    py::class_<FittedBlade>(m, "FittedBlade", DOC(FittedBlade));
    py::class_<BladeMeasured>(m, "BladeMeasured", DOC(BladeMeasured));
    py::class_<BladesPlan>(m, "BladesPlan", DOC(BladesPlan));
    py::class_<BladeMoves>(m, "BladeMoves", DOC(BladeMoves));
    py::class_<BladeLever>(m, "BladeLever", DOC(BladeLever));
}

void define_fit_plan(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    define_rules();
    auto step = declared<FitStep>();
    define_record(step, BACKSPRING_FIELD(FitStep, blade), BACKSPRING_FIELD(FitStep, step),
                  BACKSPRING_FIELD(FitStep, pass_number), BACKSPRING_FIELD(FitStep, face),
                  BACKSPRING_FIELD(FitStep, remove_mm), BACKSPRING_FIELD(FitStep, half_stop_mm),
                  BACKSPRING_FIELD(FitStep, closed_mm),
                  BACKSPRING_FIELD(FitStep, half_stop_loaded_mm),
                  BACKSPRING_FIELD(FitStep, closed_loaded_mm), BACKSPRING_FIELD(FitStep, tip_mm));
    auto plan = declared<FitPlan>();
    define_record(plan, BACKSPRING_FIELD(FitPlan, steps), BACKSPRING_FIELD(FitPlan, passes),
                  BACKSPRING_FIELD(FitPlan, aim_mm), BACKSPRING_FIELD(FitPlan, half_stop_loaded_mm),
                  BACKSPRING_FIELD(FitPlan, closed_loaded_mm), BACKSPRING_FIELD(FitPlan, removed),
                  BACKSPRING_FIELD(FitPlan, left_standing), BACKSPRING_FIELD(FitPlan, tip_mm),
                  BACKSPRING_FIELD(FitPlan, tip_runs_out), BACKSPRING_FIELD(FitPlan, level_removed),
                  BACKSPRING_FIELD(FitPlan, now), BACKSPRING_FIELD(FitPlan, done),
                  BACKSPRING_FIELD(FitPlan, notices));

    define_blades_plan();

    m.def("as_measured",
          py::overload_cast<const Design&, const Measured&, const FitUnknowns&>(&as_measured),
          py::arg("design"), py::arg("measured"), argument("unknowns", FitUnknowns{}), NoGil(),
          DOC(as_measured));
    m.def("as_measured_blades",
          py::overload_cast<const Design&, const std::vector<BladeMeasured>&>(&as_measured),
          py::arg("design"), py::arg("measured"), NoGil(), DOC(as_measured));
    m.def("fit_plan_of_blades",
          py::overload_cast<const Design&, const std::vector<FittedBlade>&, FitState,
                            const PlanRules&>(&fit_plan),
          py::arg("now"), py::arg("blades"), py::arg("state"), argument("rules", PlanRules{}),
          NoGil(), DOC(fit_plan));
    m.def("blade_levers", &blade_levers, py::arg("design"), NoGil(), DOC(blade_levers));
    m.def(
        "fit_plan",
        py::overload_cast<const Design&, FitState, const PlanRules&, const FitUnknowns&>(&fit_plan),
        py::arg("now"), py::arg("state"), argument("rules", PlanRules{}),
        argument("unknowns", FitUnknowns{}), NoGil(), DOC(fit_plan));
}

}  // namespace backspring::python
