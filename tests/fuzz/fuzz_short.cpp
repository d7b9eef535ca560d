#include "ask_design.hpp"
#include "at_most_a_second.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::at_most_a_second([&] { fuzz::ask_short({data, size}); });
    return 0;
}
