#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

#include "ask_design.hpp"
#include "catch.hpp"

namespace {

using Ask = void (*)(std::span<const std::uint8_t>);

/// Asks what each file of a folder says; returns how many there were.
int replay(const std::filesystem::path& folder, Ask ask) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        std::ifstream file(entry.path(), std::ios::binary);
        const std::vector<std::uint8_t> bytes{std::istreambuf_iterator<char>(file), {}};
        INFO(entry.path().filename().string());
        CHECK_NOTHROW(ask(bytes));
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
