#pragma once

#include "backspring/design/design.hpp"
#include "bytes.hpp"

namespace fuzz {

/// A question asked of a sound or unsound design with what the bytes say besides.
using Question = void (*)(const backspring::Design&, Bytes&);

// What is asked about work at the bench: grinding, sizing and fitting.
void ask_grind(const backspring::Design& design, Bytes& bytes);
void ask_grind_depth(const backspring::Design& design, Bytes& bytes);
void ask_flush(const backspring::Design& design, Bytes& bytes);
void ask_size(const backspring::Design& design, Bytes& bytes);
void ask_taper(const backspring::Design& design, Bytes& bytes);
void ask_plan(const backspring::Design& design, Bytes& bytes);
void ask_allowance(const backspring::Design& design, Bytes& bytes);

}  // namespace fuzz
