// Draws joints and counts how often each relation is missed: count_misses [joints] [seed]
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "drawn/relations.hpp"

int main(int argc, char** argv) {
    const int joints = argc > 1 ? std::atoi(argv[1]) : 5000;
    drawn::Chance chance(argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1);
    const auto relations = drawn::relations();
    std::vector<int> misses(relations.size()), missed(relations.size());
    int angles = 0, both = 0, kicks = 0;
    for (int i = 0; i < joints; ++i) {
        const drawn::Draw draw = drawn::draw_with_angles(chance, 16);
        angles += static_cast<int>(draw.angles_deg.size());
        both += drawn::two_touches(draw);
        kicks += draw.parts.tang.kick.has_value();
        for (std::size_t r = 0; r < relations.size(); ++r) {
            const int count = relations[r].misses(draw);
            misses[r] += count;
            missed[r] += count > 0;
            if (count > 0) std::printf("joint %d: %s: %d\n", i, relations[r].claim, count);
        }
    }
    std::printf("%d joints, %d with a kick; %d contacts, %d with two touches\n", joints, kicks,
                angles, both);
    int all = 0;
    for (std::size_t r = 0; r < relations.size(); ++r) {
        std::printf("%6d misses in %5d joints  %s\n", misses[r], missed[r], relations[r].claim);
        all += misses[r];
    }
    return all > 0;
}
