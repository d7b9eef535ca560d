#include "ask_design.hpp"
#include "design_of_bytes.hpp"
#include "figures.hpp"
#include "questions.hpp"
#include "several_blades.hpp"

using namespace backspring;

namespace fuzz {
namespace {

/// A design of two blades, or of one with a half-stop and a kick.
const Design& two_or_one(Bytes& bytes) {
    static const Design two = designs::redstart(), one = designs::plover();
    return bytes.flag() ? two : one;
}

/// A key of the design file, or letters that are none, or one put together of both.
std::string key_of_bytes(Bytes& bytes) {
    std::string key = fields()[bytes.one_of(fields().size())].key;
    if (bytes.one_of(4) == 0) key = "blades.main." + key;
    if (bytes.one_of(4) == 0) key += bytes.text();
    if (bytes.one_of(6) == 0) key = bytes.text();
    return key;
}

/// A file's numbers: any key with any count of any values.
Design given_design(Bytes& bytes) {
    GivenNumbers given;
    for (std::size_t i = bytes.one_of(40); i > 0; --i) {
        const Eigen::VectorXd values = numbers_of(bytes, 8);
        given[key_of_bytes(bytes)] = std::vector<double>(values.begin(), values.end());
    }
    static const Design heron = designs::heron();
    return with_numbers(heron, given);
}

void ask_given(Bytes& bytes) {
    const Design design = given_design(bytes);
    if (faults(design).empty()) hold(check(design));
}

void ask_keys(Bytes& bytes) {
    const Design& design = two_or_one(bytes);
    const std::string key = key_of_bytes(bytes);
    if (find_dimension(design, key)) {
        (void)has_dimension(design, key);
        (void)dimension_value(design, key);
    }
    const Design changed = with_dimension(design, key, bytes.number(1.0, -10.0, 10.0));
    require(changed.blades.size() == design.blades.size(), "a blade is lost");
    (void)faults(changed);
}

void ask_many(Bytes& bytes) {
    std::vector<Change> changes;
    const std::size_t rows = bytes.one_of(4);
    for (std::size_t i = bytes.one_of(3); i > 0; --i) {
        Change change{key_of_bytes(bytes), Eigen::ArrayXd(static_cast<Eigen::Index>(rows))};
        for (double& each : change.values) each = bytes.number(1.0, -10.0, 10.0);
        changes.push_back(std::move(change));
    }
    BatchSettings settings{.threads = static_cast<int>(bytes.one_of(4)) - 1,
                           .chunk_rows = static_cast<int>(bytes.byte()),
                           .columns = {}};
    const std::vector<std::string> all = batch_columns();
    if (bytes.flag())
        settings.columns = {bytes.flag() ? all[bytes.one_of(all.size())] : bytes.text()};
    const Batch batch = check_many(designs::plover(), changes, settings);
    for (const BatchColumn& column : batch.columns) {
        require(!column.values.isInf().any(), "an endless number in a row: " + column.name);
    }
}

void ask_spreads(Bytes& bytes) {
    const Design& design = two_or_one(bytes);
    std::vector<Spread> spreads(bytes.one_of(30));
    for (Spread& each : spreads) {
        each = {key_of_bytes(bytes), bytes.flag() ? SpreadKind::normal : SpreadKind::uniform,
                bytes.number(0.1, 0.0, 1.0)};
    }
    const std::vector<Change> rows =
        draw_rows(design, spreads, static_cast<std::int64_t>(bytes.byte()) - 4, bytes.word());
    for (const Change& change : rows) Figures("spreads").hold(change.values);
}

void ask_angles(Bytes& bytes) {
    const Design& design = two_or_one(bytes);
    std::vector<double> angles(bytes.one_of(5));
    for (double& each : angles) each = bytes.number(90.0, -45.0, 225.0);
    for (const BladeContact& each : contacts_at(design, angles)) {
        Figures("angles").hold(each.contact.force_n);
        Figures("angles").hold(each.moved_mm);
    }
}

constexpr TableQuestion kQuestions[]{
    &ask_given,   &ask_keys,    &ask_many,          &ask_least_squares, &ask_least_squares,
    &ask_turning, &ask_temper,  &ask_fitted_temper, &ask_hardness,      &ask_chance,
    &ask_sample,  &ask_spreads, &ask_angles};

}  // namespace

void ask_small_table(Bytes& bytes) {
    static constexpr TableQuestion kSmall[]{
        &ask_keys,     &ask_least_squares, &ask_turning,
        &ask_temper,   &ask_fitted_temper, &ask_chance,
        &ask_hardness, &ask_sample,        [](Bytes& more) { (void)faults(given_design(more)); }};
    kSmall[bytes.one_of(std::size(kSmall))](bytes);
}

void ask_tables(std::span<const std::uint8_t> input) {
    Bytes bytes(input);
    const TableQuestion question = kQuestions[bytes.one_of(std::size(kQuestions))];
    try {
        question(bytes);
    } catch (const Error&) {
        // A refusal in the library's own words.
    }
}

}  // namespace fuzz
