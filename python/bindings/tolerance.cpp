#include "backspring/tolerance/tolerance.hpp"

#include <pybind11/eigen.h>

#include "backspring/tolerance/quasi_random.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

void define_parts(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    auto spread = declared<Spread>();
    define_record(spread, BACKSPRING_FIELD(Spread, key), BACKSPRING_FIELD(Spread, kind),
                  BACKSPRING_FIELD(Spread, size));
    auto rows = declared<ToleranceRows>();
    define_fields(rows, BACKSPRING_FIELD(ToleranceRows, sample),
                  BACKSPRING_FIELD(ToleranceRows, second),
                  BACKSPRING_FIELD(ToleranceRows, changes));
    auto stroke = declared<StrokeSpread>();
    define_record(stroke, BACKSPRING_FIELD(StrokeSpread, name),
                  BACKSPRING_FIELD(StrokeSpread, nominal), BACKSPRING_FIELD(StrokeSpread, slopes),
                  BACKSPRING_FIELD(StrokeSpread, root_sum_square_sd));
    auto local = declared<LocalSpread>();
    define_record(
        local, BACKSPRING_FIELD(LocalSpread, name), BACKSPRING_FIELD(LocalSpread, nominal),
        BACKSPRING_FIELD(LocalSpread, slopes), BACKSPRING_FIELD(LocalSpread, root_sum_square_sd),
        BACKSPRING_FIELD(LocalSpread, worst_low), BACKSPRING_FIELD(LocalSpread, worst_high),
        BACKSPRING_FIELD(LocalSpread, strokes));
    auto sample = declared<SampleSummary>();
    define_record(sample, BACKSPRING_FIELD(SampleSummary, count),
                  BACKSPRING_FIELD(SampleSummary, mean), BACKSPRING_FIELD(SampleSummary, sd),
                  BACKSPRING_FIELD(SampleSummary, quantiles));
    auto share = declared<VarianceShare>();
    define_record(share, BACKSPRING_FIELD(VarianceShare, first),
                  BACKSPRING_FIELD(VarianceShare, total));
    auto chance = declared<BatchChance>();
    define_record(
        chance, BACKSPRING_FIELD(BatchChance, share), BACKSPRING_FIELD(BatchChance, share_low),
        BACKSPRING_FIELD(BatchChance, share_high), BACKSPRING_FIELD(BatchChance, chance),
        BACKSPRING_FIELD(BatchChance, chance_low), BACKSPRING_FIELD(BatchChance, chance_high));
    m.def(
        "quantiles", [] { return kQuantiles; }, DOC(kQuantiles));
    m.def("quasi_random", &quasi_random, py::arg("index"), py::arg("dimension"), py::arg("seed"),
          DOC(quasi_random));
    m.def("sobol_bits", &sobol_bits, py::arg("index"), py::arg("dimension"), DOC(sobol_bits));
    m.def("variance_shares", &variance_shares, py::arg("a"), py::arg("b"), py::arg("mixed"),
          NoGil(), DOC(variance_shares));
    m.def("batch_chance", &batch_chance, py::arg("good"), py::arg("count"), py::arg("pieces"),
          DOC(batch_chance));
    m.def("summarise", &summarise, py::arg("values"), NoGil(), DOC(summarise));
}

}  // namespace

void declare_tolerance(py::module_& m) {
    py::native_enum<SpreadKind>(m, "SpreadKind", "enum.Enum", DOC(SpreadKind))
        .value("normal", SpreadKind::normal, DOC(SpreadKind_normal))
        .value("uniform", SpreadKind::uniform, DOC(SpreadKind_uniform))
        .finalize();
    py::class_<Spread>(m, "Spread", DOC(Spread));
    py::class_<ToleranceRows>(m, "ToleranceRows", DOC(ToleranceRows));
    py::class_<StrokeSpread>(m, "StrokeSpread", DOC(StrokeSpread));
    py::class_<LocalSpread>(m, "LocalSpread", DOC(LocalSpread));
    py::class_<SampleSummary>(m, "SampleSummary", DOC(SampleSummary));
    py::class_<VarianceShare>(m, "VarianceShare", DOC(VarianceShare));
    py::class_<BatchChance>(m, "BatchChance", DOC(BatchChance));
    py::class_<ResultSpread>(m, "ResultSpread", DOC(ResultSpread));
    py::class_<TargetShare>(m, "TargetShare", DOC(TargetShare));
    py::class_<Tolerance>(m, "Tolerance", DOC(Tolerance));
}

void define_tolerance(py::module_& m) {
    using NoGil = py::call_guard<py::gil_scoped_release>;
    define_parts(m);
    auto result = declared<ResultSpread>();
    define_record(result, BACKSPRING_FIELD(ResultSpread, local),
                  BACKSPRING_FIELD(ResultSpread, sample), BACKSPRING_FIELD(ResultSpread, shares));
    auto target = declared<TargetShare>();
    define_record(target, BACKSPRING_FIELD(TargetShare, name), BACKSPRING_FIELD(TargetShare, low),
                  BACKSPRING_FIELD(TargetShare, high), BACKSPRING_FIELD(TargetShare, met),
                  BACKSPRING_FIELD(TargetShare, stated));
    auto tolerance = declared<Tolerance>();
    define_record(tolerance, BACKSPRING_FIELD(Tolerance, results),
                  BACKSPRING_FIELD(Tolerance, targets), BACKSPRING_FIELD(Tolerance, rows),
                  BACKSPRING_FIELD(Tolerance, working), BACKSPRING_FIELD(Tolerance, good),
                  BACKSPRING_FIELD(Tolerance, batch), BACKSPRING_FIELD(Tolerance, complete));
    m.def("standard_deviation", &standard_deviation, py::arg("spread"), DOC(standard_deviation));
    m.def("farthest", &farthest, py::arg("spread"), DOC(farthest));
    m.def("require_spreads", &require_spreads, py::arg("design"), py::arg("spreads"),
          DOC(require_spreads));
    m.def("tolerance_columns", &tolerance_columns, py::arg("design"), DOC(tolerance_columns));
    m.def("tolerance_rows", &tolerance_rows, py::arg("design"), py::arg("spreads"), py::arg("rows"),
          py::arg("seed"), py::arg("with_shares"), NoGil(), DOC(tolerance_rows));
    m.def("local_spreads", &local_spreads, py::arg("design"), py::arg("spreads"),
          py::arg("columns"), NoGil(), DOC(local_spreads));
    m.def("sum_up", &sum_up, py::arg("design"), py::arg("spreads"), py::arg("plan"),
          py::arg("batch"), py::arg("pieces"), NoGil(), DOC(sum_up));
}

}  // namespace backspring::python
