#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <string>
#include <utility>
#include <vector>

// Reads plausible and hostile values out of bytes that a fuzzer changes. Behind the last byte all
// are 0, so that a short input is a mild one.
namespace fuzz {

class Bytes {
  public:
    explicit Bytes(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

    [[nodiscard]] bool empty() const { return at_ >= bytes_.size(); }

    std::uint8_t byte() { return empty() ? std::uint8_t{0} : bytes_[at_++]; }

    /// One of `count` places, from 0.
    std::size_t one_of(std::size_t count) { return count == 0 ? 0 : byte() % count; }

    template <class Value>
    const Value& pick(std::span<const Value> values) {
        return values[one_of(values.size())];
    }

    bool flag() { return byte() % 2 == 1; }

    std::uint32_t word() {
        std::uint32_t all = 0;
        for (int i = 0; i < 4; ++i) all = all << 8U | byte();
        return all;
    }

    /// From 0 to 1, in steps fine enough for any measure of a knife.
    double share() {
        const unsigned high = byte();
        return static_cast<double>(high << 8U | byte()) / 65535.0;
    }

    double between(double low, double high) { return low + (high - low) * share(); }

    /// Any number at all that eight bytes can be, among them those that are none.
    double any_number() {
        const std::uint64_t high = word();
        return std::bit_cast<double>(high << 32U | word());
    }

    double hostile() {
        static constexpr double kHuge = std::numeric_limits<double>::max();
        static constexpr double kTiny = std::numeric_limits<double>::denorm_min();
        static constexpr double kEndless = std::numeric_limits<double>::infinity();
        static constexpr std::array kNumbers{
            0.0,   -0.0,   kTiny, -kTiny, 1e-300,   1e-160,
            1e-30, 1e-9,   1e-3,  -1e-3,  1.0,      -1.0,
            1e3,   1e9,    1e30,  1e160,  1e300,    -1e300,
            kHuge, -kHuge, 1e-12, -1e-12, kEndless, std::numeric_limits<double>::quiet_NaN()};
        const std::size_t which = one_of(kNumbers.size() + 2);
        return which < kNumbers.size() ? kNumbers[which] : any_number();
    }

    /// A number in the place of another: near it, anywhere in its range or on its ends, or hostile.
    double number(double now, double least, double greatest) {
        switch (one_of(12)) {
            case 0:
                return least;
            case 1:
                return greatest;
            case 2:
                return hostile();
            case 3:
                return between(least, greatest);
            case 4:
                return least > 0.0 ? least * std::pow(greatest / least, share())
                                   : greatest * std::pow(1e-9, share());
            case 5:
                return now * between(0.9, 1.1);
            case 6:
                return now * std::pow(10.0, between(-3.0, 3.0));
            case 7:
                return now + between(-1e-6, 1e-6);
            case 8:
                return std::round(now);
            default:
                return now * between(0.5, 2.0);
        }
    }

    /// A few letters and signs of a key, or any byte.
    std::string text() {
        std::string text(one_of(24), ' ');
        for (char& each : text) each = static_cast<char>(byte());
        return text;
    }

  private:
    std::span<const std::uint8_t> bytes_;
    std::size_t at_ = 0;
};

}  // namespace fuzz
