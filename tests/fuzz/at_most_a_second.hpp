#pragma once

#include <cstdio>
#include <cstdlib>
#include <ctime>

namespace fuzz {

/// Runs a question and ends the program where it takes too much of the processor's own time, which
/// other programs on the machine do not change. FUZZ_SECONDS in the environment sets the limit.
///
/// Sanitisers and counters make the core some eight times slower, so 8 s stand for one.
template <class Run>
void at_most_a_second(Run run) {
    static const double limit = [] {
        const char* stated = std::getenv("FUZZ_SECONDS");
        return stated ? std::atof(stated) : 8.0;
    }();
    const std::clock_t start = std::clock();
    run();
    const double took = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    if (took <= limit) return;
    std::fprintf(stderr, "took %.2f s of processor time\n", took);
    std::abort();
}

}  // namespace fuzz
