#pragma once

#include "backspring/design/design.hpp"
#include "bytes.hpp"

namespace fuzz {

/// A design that starts from an invented one, or one drawn by chance, and is changed by the bytes:
/// numbers of any key, stations, holes, bands, kinds and blades.
[[nodiscard]] backspring::Design design_of(Bytes& bytes);

}  // namespace fuzz
