#include "backspring/tolerance/quasi_random.hpp"

#include <bit>

#include "backspring/core/error.hpp"
#include "sobol_table.hpp"

namespace backspring {
namespace {

constexpr int kBits = 32;
using Directions = std::array<std::uint32_t, kBits>;

// m_j = m_{j-s} ^ 2^s m_{j-s} ^ sum over k of 2^k a_k m_{j-k}; then v_j = m_j / 2^(j+1).
constexpr Directions directions(const SobolRow& row) {
    std::array<std::uint32_t, kBits> m{};
    const int degree = static_cast<int>(std::bit_width(row.polynomial)) - 1;
    for (int j = 0; j < kBits; ++j) {
        const auto at = static_cast<std::size_t>(j);
        if (degree == 0) {
            m[at] = 1;
        } else if (j < degree) {
            m[at] = row.first[at];
        } else {
            const auto back = [&](int k) { return m[static_cast<std::size_t>(j - k)]; };
            m[at] = back(degree);
            for (int k = 1; k <= degree; ++k) {
                if (row.polynomial >> (degree - k) & 1u) m[at] ^= back(k) << k;
            }
        }
    }
    for (int j = 0; j < kBits; ++j) m[static_cast<std::size_t>(j)] <<= kBits - 1 - j;
    return m;
}

constexpr auto kDirections = [] {
    std::array<Directions, kSobolRows.size()> all{};
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = directions(kSobolRows[i]);
    return all;
}();
static_assert(kSobolRows.size() == kMostQuasiDimensions);

std::uint32_t reversed(std::uint32_t x) {
    x = (x >> 16) | (x << 16);
    x = ((x & 0x00ff00ffu) << 8) | ((x & 0xff00ff00u) >> 8);
    x = ((x & 0x0f0f0f0fu) << 4) | ((x & 0xf0f0f0f0u) >> 4);
    x = ((x & 0x33333333u) << 2) | ((x & 0xccccccccu) >> 2);
    return ((x & 0x55555555u) << 1) | ((x & 0xaaaaaaaau) >> 1);
}

std::uint32_t mixed(std::uint32_t x) {
    x ^= x >> 16;
    x *= 0x7feb352du;
    x ^= x >> 15;
    x *= 0x846ca68bu;
    return x ^ (x >> 16);
}

/// Changes each digit by those before it: even factors carry only from low digits to high ones.
std::uint32_t scrambled(std::uint32_t bits, std::uint32_t seed) {
    std::uint32_t x = reversed(bits);
    x += seed;
    x ^= x * 0x6c50b47cu;
    x ^= x * 0xb82f1e52u;
    x ^= x * 0xc7afe638u;
    x ^= x * 0x8d22f6e6u;
    return reversed(x);
}

}  // namespace

std::uint32_t sobol_bits(std::uint32_t index, int dimension) {
    if (dimension < 0 || dimension >= kMostQuasiDimensions) {
        throw OutOfRange("dimension: must be from 0 to 47, got " + std::to_string(dimension));
    }
    const Directions& v = kDirections[static_cast<std::size_t>(dimension)];
    std::uint32_t bits = 0;
    for (; index != 0; index &= index - 1) {
        bits ^= v[static_cast<std::size_t>(std::countr_zero(index))];
    }
    return bits;
}

double quasi_random(std::uint32_t index, int dimension, std::uint32_t seed) {
    const std::uint32_t own = mixed(mixed(seed) + static_cast<std::uint32_t>(dimension));
    return (scrambled(sobol_bits(index, dimension), own) + 0.5) * 0x1p-32;
}

}  // namespace backspring
