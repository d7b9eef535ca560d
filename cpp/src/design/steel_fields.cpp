#include "field_rows.hpp"

namespace backspring {
namespace {

void set_yield(Design& d, double value) {
    Band& yield = d.strength.yield_mpa;
    const double ratio = value / yield.value;
    yield = {.value = value, .low = ratio * yield.low, .high = ratio * yield.high};
}

std::optional<double> tensile(const Design& d) {
    const double value = d.strength.tensile_mpa.value;
    return value == 0.0 ? std::nullopt : std::optional(value);
}

}  // namespace

std::vector<Field> detail::steel_fields() {
    return {
        {.key = "spring.steel",
         .form = Form::text,
         .required = true,
         .left_out = "must be given",
         .meaning = "The steel's name, as `backspring steels` lists them.",
         .example = "\"O1\""},
        {.key = "spring.hardness",
         .form = Form::readings,
         .quantity = Quantity::hardness,
         .least = kSoftestHrc,
         .greatest = kHardestHrc,
         .left_out = "from temper; one of hardness, temper, yield and tensile must be given",
         .meaning = "Rockwell C of the spring after its temper, or a list of readings, whose mean "
                    "counts. The strength follows from it.",
         .example = "\"45 HRC\""},
        {.key = "spring.temper",
         .quantity = Quantity::temperature,
         .least = 20.0,
         .greatest = 1200.0,
         .left_out = "none: the hardness is given",
         .meaning = "Temperature of the temper. The hardness follows from the steel's data.",
         .example = "\"515 C\""},
        {.key = "spring.temper_time",
         .quantity = Quantity::time,
         .least = 0.001,
         .greatest = 1000.0,
         .left_out = "the hold that the steel's data were measured with",
         .meaning = "How long the temper was held.",
         .example = "\"2 h\""},
        {.key = "spring.youngs_modulus",
         .quantity = Quantity::stress,
         .least = 1e3,
         .greatest = 1e6,
         .dimension = true,
         .left_out = "from the steel's data",
         .meaning = "Young's modulus of the spring.",
         .example = "\"205 GPa\"",
         BACKSPRING_PLACE(spring.elastic.youngs_modulus_mpa)},
        {.key = "spring.poisson",
         .quantity = Quantity::ratio,
         .least = 0.0,
         .greatest = 0.49,
         .dimension = true,
         .left_out = "from the steel's data",
         .meaning = "Poisson's ratio of the spring.",
         .example = "0.29",
         BACKSPRING_PLACE(spring.elastic.poisson)},
        {.key = "spring.yield",
         .quantity = Quantity::stress,
         .least = kWeakestMpa,
         .greatest = kStrongestMpa,
         .dimension = true,
         .left_out = "from tensile, hardness or temper",
         .meaning = "Yield stress (0.2 % proof) of the spring. Changed in a study, its band of "
                    "uncertainty goes with it in proportion.",
         .example = "\"1300 MPa\"",
         .get = [](const Design& d) -> std::optional<double> { return d.strength.yield_mpa.value; },
         .set = set_yield},
        {.key = "spring.tensile",
         .quantity = Quantity::stress,
         .least = kWeakestMpa,
         .greatest = kStrongestMpa,
         .left_out = "from hardness or temper",
         .meaning = "Tensile strength of the spring.",
         .example = "\"1500 MPa\"",
         .get = tensile},
    };
}

}  // namespace backspring
