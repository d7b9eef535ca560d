#include <backspring/backspring.hpp>
#include <cstdlib>
#include <memory>

// A user's own types in the library's namespace, with names that the library uses for private
// types: linked against a library that inlines nothing, each must keep its own functions.
namespace backspring {

struct Trial {
    virtual ~Trial() = default;
    [[nodiscard]] virtual double load_n() const { return 1.5; }
};

struct Opening : Trial {
    [[nodiscard]] double load_n() const override { return 2.5; }
    double width_mm[64]{};
};

class BearingSearch {
  public:
    [[nodiscard]] int count() const { return 7; }
};

}  // namespace backspring

namespace {

bool own_types_are_kept() {
    const std::unique_ptr<backspring::Trial> trial = std::make_unique<backspring::Opening>();
    return trial->load_n() == 2.5 && backspring::BearingSearch{}.count() == 7;
}

/// A plain strip, clamped: a check goes through every room of the library.
bool a_check_runs() {
    backspring::Design design;
    design.spring.thickness = {{0.0, 3.0}, {36.0, 2.5}};
    design.spring.width_mm = 2.3;
    design.spring.support.kind = backspring::SupportKind::clamped;
    design.own().pad = {27.0, 36.0};
    design.strength = backspring::strength_from_hardness(45.0, {0.85, 0.8, 0.9});
    design.own().tang.pivot_mm = 32.0;
    design.own().tang.open_mm = design.own().tang.closed_mm = 4.5;
    design.own().tang.half_stop_mm = 4.6;
    design.own().tang.corner_open_mm = design.own().tang.corner_closed_mm = 0.7;
    design.own().tang.front_mm = 5.0;
    design.own().fit = {.preload_mm = 0.5, .dial_mm = 33.5};
    const backspring::Check check = backspring::check(design);
    return check.positions.size() == 3 && check.travel.peak_stress_mpa > 0.0;
}

}  // namespace

// ASTM E140: 45 HRC is 446 HV.
int main() {
    const bool good =
        backspring::vickers_hv(45.0) == 446.0 && own_types_are_kept() && a_check_runs();
    return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
