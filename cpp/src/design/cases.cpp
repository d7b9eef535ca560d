#include "backspring/design/cases.hpp"

namespace backspring {

std::vector<Stand> stands_of(const Tang& tang) {
    if (tang.half_stop_mm) return {Stand::closed, Stand::half_stop, Stand::open};
    return {Stand::closed, Stand::open};
}

std::vector<Design> cases(const Design& design) {
    std::vector<Design> all{design};
    for (std::size_t i = 1; i < design.blades.size(); ++i) {
        std::vector<Design> more;
        for (const Stand stand : stands_of(design.blades[i].tang)) {
            for (Design one : all) {
                one.blades[i].stands = stand;
                more.push_back(std::move(one));
            }
        }
        all = std::move(more);
    }
    return all;
}

std::vector<Design> all_cases(const Design& design) {
    std::vector<Design> all;
    for (std::size_t i = 0; i < design.blades.size(); ++i) {
        for (Design& one : cases(seen_from(design, i))) all.push_back(std::move(one));
    }
    return all;
}

}  // namespace backspring
