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

/// A question of tables, texts and single numbers.
using TableQuestion = void (*)(Bytes&);

void ask_least_squares(Bytes& bytes);
void ask_turning(Bytes& bytes);
void ask_temper(Bytes& bytes);
void ask_fitted_temper(Bytes& bytes);
void ask_hardness(Bytes& bytes);
void ask_chance(Bytes& bytes);
void ask_sample(Bytes& bytes);

/// One of those that take microseconds.
void ask_small_table(Bytes& bytes);

/// So many numbers at most, near one, within ten, or hostile.
Eigen::VectorXd numbers_of(Bytes& bytes, std::size_t most);

}  // namespace fuzz
