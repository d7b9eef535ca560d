#include "backspring/many/batch.hpp"

#include <pybind11/eigen.h>

#include "keep_going.hpp"
#include "module.hpp"
#include "record.hpp"

namespace backspring::python {

void declare_batch(py::module_& m) {
    py::class_<Change>(m, "Change", DOC(Change));
    py::class_<BatchColumn>(m, "BatchColumn", DOC(BatchColumn));
    py::class_<Batch>(m, "Batch", DOC(Batch));
    py::native_enum<RowStatus>(m, "RowStatus", "enum.Enum", DOC(RowStatus))
        .value("ok", RowStatus::ok, DOC(RowStatus_ok))
        .value("invalid", RowStatus::invalid, DOC(RowStatus_invalid))
        .value("no_closed_rest", RowStatus::no_closed_rest, DOC(RowStatus_no_closed_rest))
        .value("no_half_stop_rest", RowStatus::no_half_stop_rest, DOC(RowStatus_no_half_stop_rest))
        .value("not_held_open", RowStatus::not_held_open, DOC(RowStatus_not_held_open))
        .value("lifted_off", RowStatus::lifted_off, DOC(RowStatus_lifted_off))
        .value("out_of_bounds", RowStatus::out_of_bounds, DOC(RowStatus_out_of_bounds))
        .value("not_run", RowStatus::not_run, DOC(RowStatus_not_run))
        .finalize();
}

void define_batch(py::module_& m) {
    auto change = declared<Change>();
    define_fields(change, BACKSPRING_FIELD(Change, key), BACKSPRING_FIELD(Change, values));
    change.def(py::init([](std::string key, Eigen::ArrayXd values) {
                   return Change{std::move(key), std::move(values)};
               }),
               py::arg("key"), py::arg("values"));
    auto column = declared<BatchColumn>();
    define_fields(column, BACKSPRING_FIELD(BatchColumn, name),
                  BACKSPRING_FIELD(BatchColumn, values));
    column.def(py::init([](std::string name, Eigen::ArrayXd values) {
                   return BatchColumn{std::move(name), std::move(values)};
               }),
               py::arg("name"), py::arg("values"));
    auto batch = declared<Batch>();
    batch.def_readonly("columns", &Batch::columns, DOC(Batch_columns))
        .def_readonly("complete", &Batch::complete, DOC(Batch_complete))
        .def_property_readonly("status", &status_codes, DOC(Batch_status))
        .def(py::init([](std::vector<BatchColumn> columns, const py::array_t<std::uint8_t>& status,
                         bool complete) {
                 Batch made{.columns = std::move(columns), .status = {}, .complete = complete};
                 for (py::ssize_t i = 0; i < status.size(); ++i) {
                     made.status.push_back(static_cast<RowStatus>(status.at(i)));
                 }
                 return made;
             }),
             py::arg("columns"), py::arg("status"), py::arg("complete"));
    m.def("batch_columns", &batch_columns, DOC(batch_columns));
    m.def(
        "check_many",
        [](const Design& design, const std::vector<Change>& changes, int threads, int chunk_rows,
           std::vector<std::string> columns, const ReportRows& report) {
            const py::gil_scoped_release free;
            return check_many(
                design, changes,
                {.threads = threads, .chunk_rows = chunk_rows, .columns = std::move(columns)},
                keep_going(report));
        },
        py::arg("design"), py::arg("changes"), py::arg("threads") = 0,
        py::arg("chunk_rows") = BatchSettings{}.chunk_rows,
        py::arg("columns") = std::vector<std::string>{}, py::arg("report") = py::none(),
        DOC(check_many));
}

}  // namespace backspring::python
