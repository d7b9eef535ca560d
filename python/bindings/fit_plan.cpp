#include "backspring/fit/fit_plan.hpp"

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
    define_record(
        rules, BACKSPRING_FIELD(PlanRules, target_mm),
        BACKSPRING_FIELD(PlanRules, repeatability_mm), BACKSPRING_FIELD(PlanRules, reserve),
        BACKSPRING_FIELD(PlanRules, closed_by), BACKSPRING_FIELD(PlanRules, tip_mm),
        BACKSPRING_FIELD(PlanRules, tip_allowance_mm), BACKSPRING_FIELD(PlanRules, material));
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
}

void define_fit_plan(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    define_rules();
    auto step = declared<FitStep>();
    define_record(step, BACKSPRING_FIELD(FitStep, step), BACKSPRING_FIELD(FitStep, pass_number),
                  BACKSPRING_FIELD(FitStep, face), BACKSPRING_FIELD(FitStep, remove_mm),
                  BACKSPRING_FIELD(FitStep, half_stop_mm), BACKSPRING_FIELD(FitStep, closed_mm),
                  BACKSPRING_FIELD(FitStep, half_stop_loaded_mm),
                  BACKSPRING_FIELD(FitStep, closed_loaded_mm), BACKSPRING_FIELD(FitStep, tip_mm));
    auto plan = declared<FitPlan>();
    define_record(plan, BACKSPRING_FIELD(FitPlan, steps), BACKSPRING_FIELD(FitPlan, passes),
                  BACKSPRING_FIELD(FitPlan, aim_mm), BACKSPRING_FIELD(FitPlan, half_stop_loaded_mm),
                  BACKSPRING_FIELD(FitPlan, closed_loaded_mm), BACKSPRING_FIELD(FitPlan, removed),
                  BACKSPRING_FIELD(FitPlan, tip_mm), BACKSPRING_FIELD(FitPlan, tip_runs_out),
                  BACKSPRING_FIELD(FitPlan, level_removed), BACKSPRING_FIELD(FitPlan, now),
                  BACKSPRING_FIELD(FitPlan, done), BACKSPRING_FIELD(FitPlan, notices));

    m.def("as_measured", &as_measured, py::arg("design"), py::arg("measured"),
          argument("unknowns", FitUnknowns{}), NoGil(), DOC(as_measured));
    m.def(
        "fit_plan",
        py::overload_cast<const Design&, FitState, const PlanRules&, const FitUnknowns&>(&fit_plan),
        py::arg("now"), py::arg("state"), argument("rules", PlanRules{}),
        argument("unknowns", FitUnknowns{}), NoGil(), DOC(fit_plan));
}

}  // namespace backspring::python
