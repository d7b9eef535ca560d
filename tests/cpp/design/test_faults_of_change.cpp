#include <cmath>
#include <string>
#include <vector>

#include "backspring/design/field.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

std::vector<std::string> told(const std::vector<Fault>& faults) {
    std::vector<std::string> all;
    for (const Fault& fault : faults) all.push_back(fault.key + ": " + fault.rule);
    return all;
}

}  // namespace

TEST_CASE("of one number changed, the rules that may read it tell the same as all",
          "[design][property]") {
    for (const auto& [name, design] : designs::all()) {
        REQUIRE(faults(design).empty());
        int broken = 0;
        for (const Field& field : fields()) {
            const auto now = field.get ? field.get(design) : std::nullopt;
            if (!now || !field.set) continue;
            for (const double value : {0.0, -*now, 0.2 * *now, 0.99999 * *now, 3.0 * *now,
                                       field.least, field.greatest, std::nan("")}) {
                CAPTURE(name, field.key, value);
                Design changed = design;
                field.set(changed, value);
                const auto all = told(faults(changed));
                CHECK(told(faults_of_change(changed, field.key)) == all);
                broken += all.empty() ? 0 : 1;
            }
        }
        CHECK(broken > 30);
    }
}
