#pragma once

#include "bytes.hpp"
#include "drawn/drawn_blades.hpp"
#include "several_blades.hpp"

namespace fuzz {

/// Arrangements of two blades; three take seconds.
inline constexpr std::size_t kOfTwo = 3;

/// A design drawn by chance: one blade, or two.
inline backspring::Design drawn_design(Bytes& bytes) {
    drawn::Chance chance(bytes.word());
    static const backspring::Design heron = designs::heron();
    backspring::Design design = heron;
    if (bytes.one_of(6) == 0) {
        const backspring::Design blades =
            drawn::draw_design(chance, drawn::kArrangements[bytes.one_of(kOfTwo)]);
        design.spring = blades.spring;
        design.blades = blades.blades;
    } else {
        const drawn::Parts parts = drawn::draw(chance);
        design.spring = parts.spring;
        design.own() = drawn::blade_of(parts, backspring::End::front);
    }
    return design;
}

/// One of the invented designs, or a drawn one.
inline backspring::Design first_design(Bytes& bytes) {
    static const std::vector<designs::Named> named = designs::all();
    const std::size_t which = bytes.one_of(named.size() + 6);
    if (which < named.size()) return named[which].design;
    switch (which - named.size()) {
        case 0:
            return designs::bunting(backspring::SupportKind::two_pins);
        case 1:
            return designs::bunting(backspring::SupportKind::clamped);
        case 2:
            return designs::whinchat();
        default:
            return drawn_design(bytes);
    }
}

}  // namespace fuzz
