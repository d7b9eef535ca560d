// Figures of designs changed by chance, to compare builds: print_figures [rows] [threads]
#include <cstdio>
#include <cstdlib>

#include "several_blades.hpp"
#include "wild_changes.hpp"

namespace {

using namespace backspring;

std::vector<designs::Named> all_designs() {
    using namespace designs;
    return {{"heron", heron()},       {"plover", plover()},
            {"wren", wren()},         {"dunlin", dunlin()},
            {"curlew", curlew()},     {"godwit", godwit()},
            {"snipe", snipe()},       {"avocet", avocet()},
            {"twite", twite()},       {"bunting", bunting(SupportKind::two_pins)},
            {"whinchat", whinchat()}, {"redstart", redstart()}};
}

}  // namespace

int main(int argc, char** argv) {
    const int rows = argc > 1 ? std::atoi(argv[1]) : 200;
    const BatchSettings settings{
        .threads = argc > 2 ? std::atoi(argv[2]) : 1, .chunk_rows = 16, .columns = {}};
    for (const designs::Named& named : all_designs()) {
        const Batch batch =
            check_many(named.design, designs::wild_changes(named.design, 7, rows), settings);
        for (int row = 0; row < rows; ++row) {
            const std::string status = name_of(batch.status[static_cast<std::size_t>(row)]);
            std::printf("%s %d %s", named.name.c_str(), row, status.c_str());
            for (const BatchColumn& column : batch.columns) {
                std::printf(" %s=%.17g", column.name.c_str(), column.values[row]);
            }
            std::printf("\n");
        }
    }
}
