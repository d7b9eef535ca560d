#include "backspring/fit/least_squares.hpp"

#include <pybind11/eigen.h>
#include <pybind11/functional.h>

#include "module.hpp"
#include "record.hpp"

namespace backspring::python {
namespace {

using PythonModel = std::function<py::object(const Eigen::VectorXd&)>;

/// Residuals alone, or with their derivatives.
Residuals read_residuals(const py::object& answer) {
    if (!py::isinstance<py::tuple>(answer)) {
        return {.values = answer.cast<Eigen::VectorXd>(), .jacobian = {}};
    }
    const auto both = answer.cast<std::pair<Eigen::VectorXd, Eigen::MatrixXd>>();
    return {.values = both.first, .jacobian = both.second};
}

using Search = LeastSquares (*)(const ResidualModel&,
                                const std::vector<Unknown>&,
                                const LeastSquaresRules&);

/// The search runs without the interpreter's lock and takes it to ask the model.
template <Search search>
LeastSquares from_python(const PythonModel& model,
                         const std::vector<Unknown>& unknowns,
                         const LeastSquaresRules& rules) {
    const ResidualModel ask = [&](const Eigen::VectorXd& x) {
        const py::gil_scoped_acquire hold;
        if (PyErr_CheckSignals() != 0) throw py::error_already_set();
        return read_residuals(model(x));
    };
    const py::gil_scoped_release release;
    return search(ask, unknowns, rules);
}

}  // namespace

void declare_least_squares(py::module_& m) {
    py::class_<Unknown>(m, "Unknown", DOC(Unknown));
    py::class_<LeastSquaresRules>(m, "LeastSquaresRules", DOC(LeastSquaresRules));
    py::class_<LeastSquares>(m, "LeastSquares", DOC(LeastSquares));
}

void define_least_squares(py::module_& m) {
    auto unknown = declared<Unknown>();
    define_record(unknown, BACKSPRING_FIELD(Unknown, start), BACKSPRING_FIELD(Unknown, least),
                  BACKSPRING_FIELD(Unknown, greatest), BACKSPRING_FIELD(Unknown, expected),
                  BACKSPRING_FIELD(Unknown, expected_sd), BACKSPRING_FIELD(Unknown, step));
    auto rules = declared<LeastSquaresRules>();
    define_record(rules, BACKSPRING_FIELD(LeastSquaresRules, most_iterations),
                  BACKSPRING_FIELD(LeastSquaresRules, tolerance));
    auto found = declared<LeastSquares>();
    define_fields(
        found, BACKSPRING_FIELD(LeastSquares, x), BACKSPRING_FIELD(LeastSquares, covariance),
        BACKSPRING_FIELD(LeastSquares, covariance_released),
        BACKSPRING_FIELD(LeastSquares, at_bound), BACKSPRING_FIELD(LeastSquares, residuals),
        BACKSPRING_FIELD(LeastSquares, jacobian), BACKSPRING_FIELD(LeastSquares, chi_squared),
        BACKSPRING_FIELD(LeastSquares, expected_chi_squared),
        BACKSPRING_FIELD(LeastSquares, iterations), BACKSPRING_FIELD(LeastSquares, converged));
    m.def("least_squares", &from_python<least_squares>, py::arg("model"), py::arg("unknowns"),
          argument("rules", LeastSquaresRules{}), DOC(least_squares));
    m.def("search_least_squares", &from_python<search_least_squares>, py::arg("model"),
          py::arg("unknowns"), argument("rules", LeastSquaresRules{}), DOC(search_least_squares));
}

}  // namespace backspring::python
