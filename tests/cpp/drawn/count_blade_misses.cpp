// Draws designs with several blades and counts how often each relation is missed:
// count_blade_misses [designs] [seed] [rows of angles] [first of them]
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "drawn/blade_relations.hpp"

int main(int argc, char** argv) {
    const int designs = argc > 1 ? std::atoi(argv[1]) : 5000;
    drawn::Chance chance(argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1);
    const int rows = argc > 3 ? std::atoi(argv[3]) : 3;
    const int first = argc > 4 ? std::atoi(argv[4]) : 0;
    const auto relations = drawn::blade_relations();
    const std::size_t kinds = drawn::kArrangements.size();
    std::vector<std::vector<int>> misses(relations.size(), std::vector<int>(kinds));
    std::vector<int> turned(kinds), rests(kinds);
    for (int i = 0; i < first + designs; ++i) {
        const std::size_t kind = static_cast<std::size_t>(i) % kinds;
        if (i < first) {
            pass_over(chance, drawn::kArrangements[kind], rows);
            continue;
        }
        const drawn::BladesDraw draw = draw_blades(chance, drawn::kArrangements[kind], rows);
        turned[kind] += static_cast<int>(draw.turned_deg.size());
        rests[kind] += count_rests(draw);
        for (std::size_t r = 0; r < relations.size(); ++r) {
            const int count = relations[r].misses(draw);
            misses[r][kind] += count;
            if (count > 0) std::printf("design %d: %s: %d\n", i, relations[r].claim, count);
        }
    }
    int all = 0;
    std::printf("%d designs, %d rows of angles each; misses by arrangement:\n", designs, rows);
    for (std::size_t k = 0; k < kinds; ++k) {
        std::printf("  %zu: %s (%d of %d angles turned to have a rest for every other blade)\n", k,
                    drawn::kArrangements[k].words, rests[k], turned[k]);
    }
    for (std::size_t r = 0; r < relations.size(); ++r) {
        for (const int count : misses[r]) {
            std::printf("%5d", count);
            all += count;
        }
        std::printf("  %s\n", relations[r].claim);
    }
    return all > 0;
}
