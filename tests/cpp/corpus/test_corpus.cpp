#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "ask_design.hpp"
#include "backspring/check/in_use.hpp"
#include "catch.hpp"
#include "design_of_bytes.hpp"

namespace {

std::vector<std::uint8_t> bytes_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

using Ask = void (*)(std::span<const std::uint8_t>);

/// Asks what each file of a folder says; returns how many there were.
int replay(const std::filesystem::path& folder, Ask ask) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        INFO(entry.path().filename().string());
        CHECK_NOTHROW(ask(bytes_of(entry.path())));
        ++files;
    }
    return files;
}

}  // namespace

TEST_CASE("inputs that fuzzers found are answered with numbers or refused", "[abuse][corpus]") {
    const std::filesystem::path corpus = BACKSPRING_CORPUS;
    CHECK(replay(corpus / "design", &fuzz::ask_design) > 0);
    CHECK(replay(corpus / "short", &fuzz::ask_short) > 0);
    CHECK(replay(corpus / "tables", &fuzz::ask_tables) > 0);
}

TEST_CASE("a few dozen contacts tell the set of a spring that yields without hope",
          "[abuse][corpus]") {
    const std::string name = GENERATE("short/yields_beside_a_kick", "design/yields_at_all");
    CAPTURE(name);
    const auto input = bytes_of(std::filesystem::path(BACKSPRING_CORPUS) / name);
    fuzz::Bytes bytes(input);
    bytes.byte();  // the question
    const backspring::PlasticSet set = backspring::permanent_set(fuzz::design_of(bytes));
    CHECK(set.yielded);
    CHECK(set.contacts <= 100);
}
