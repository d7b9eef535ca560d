#include <cmath>
#include <cstring>

#include "backspring/check/check.hpp"
#include "backspring/design/field.hpp"
#include "backspring/many/batch.hpp"
#include "catch.hpp"
#include "several_blades.hpp"
#include "wild_changes.hpp"

using namespace backspring;
using designs::row_of;
using designs::wild_changes;

namespace {

constexpr int kRows = 60;

const Eigen::ArrayXd& column(const Batch& batch, const std::string& name) {
    for (const BatchColumn& each : batch.columns) {
        if (each.name == name) return each.values;
    }
    throw OutOfRange("no column " + name);
}

void require_close(const std::string& name, double got, std::optional<double> wanted) {
    INFO(name);
    if (!wanted) {
        CHECK(std::isnan(got));
        return;
    }
    // Readings may be nothing: then a nanometre counts.
    CHECK_THAT(got, WithinRel(*wanted, 1e-6) || WithinAbs(*wanted, 1e-6));
}

void compare(const Batch& batch, Eigen::Index row, const Check& full) {
    const auto got = [&](const char* name) { return column(batch, name)[row]; };
    const auto same = [&](const char* name, std::optional<double> wanted) {
        require_close(name, got(name), wanted);
    };
    std::optional<double> pull, torque, snap;
    for (const StrokeReport& each : full.strokes) {
        if (each.peak_pull_n) pull = std::max(pull.value_or(*each.peak_pull_n), *each.peak_pull_n);
        torque =
            std::max(torque.value_or(each.stroke.peak_torque_nmm), each.stroke.peak_torque_nmm);
        snap = std::max(snap.value_or(0.0), each.stroke.snap_energy_mj);
        same(each.from_position == "closed" ? "crest_from_closed_deg" : "crest_from_half_stop_deg",
             each.stroke.crest_angle_deg);
    }
    same("peak_pull_n", pull);
    same("peak_torque_nmm", torque);
    same("snap_energy_mj", snap);
    same("travel_peak_stress_mpa", full.travel.peak_stress_mpa);
    same("yield_margin", full.travel.yield_margin);
    same("yield_margin_low", full.travel.yield_margin_low);
    same("stiffness_n_per_mm", full.stiffness_n_per_mm);
    same("force_open_n", full.position("open")->force_n);
    for (const std::string name : {"half_stop", "closed"}) {
        const Position* position = full.position(name);
        const auto of = [&](double Position::*member) {
            return position ? std::optional<double>(position->*member) : std::nullopt;
        };
        same(("force_" + name + "_n").c_str(), of(&Position::force_n));
        same(("blade_angle_" + name + "_deg").c_str(), of(&Position::blade_angle_deg));
        same(("reading_loaded_" + name + "_mm").c_str(), of(&Position::reading_loaded_mm));
        same(("reading_unloaded_" + name + "_mm").c_str(),
             position ? position->reading_unloaded_mm : std::nullopt);
    }
}

bool same_bits(const Batch& a, const Batch& b) {
    bool same = a.status == b.status && a.columns.size() == b.columns.size();
    for (std::size_t k = 0; same && k < a.columns.size(); ++k) {
        const auto &x = a.columns[k].values, &y = b.columns[k].values;
        same = x.size() == y.size() &&
               std::memcmp(x.data(), y.data(),
                           sizeof(double) * static_cast<std::size_t>(x.size())) == 0;
    }
    return same;
}

}  // namespace

TEST_CASE("a row says what a full check of that design says", "[batch]") {
    unsigned start = 1;
    int good = 0, invalid = 0;
    for (const auto& [name, design] : designs::all()) {
        const std::vector<Change> changes = wild_changes(design, start++, kRows);
        const Batch batch = check_many(design, changes);
        REQUIRE(batch.complete);
        for (Eigen::Index row = 0; row < kRows; ++row) {
            INFO(name << ", row " << row);
            const Design changed = row_of(design, changes, row);
            const RowStatus status = batch.status[static_cast<std::size_t>(row)];
            REQUIRE((status == RowStatus::invalid) == !faults(changed).empty());
            if (status == RowStatus::invalid) {
                CHECK(column(batch, "peak_pull_n").row(row).isNaN().all());
                ++invalid;
                continue;
            }
            compare(batch, row, check(changed));
            good += status == RowStatus::ok;
        }
    }
    CHECK(good > 200);
    CHECK(invalid > 5);
}

TEST_CASE("a row of several blades is the worst of all cases to the last bit", "[batch][blades]") {
    for (const Design& design : {designs::bunting(backspring::SupportKind::two_pins),
                                 designs::bunting(backspring::SupportKind::clamped)}) {
        const Eigen::ArrayXd preloads = Eigen::ArrayXd::LinSpaced(5, 0.5, 0.9);
        for (const char* key : {"fit.preload", "blades.pen.fit.preload"}) {
            const Batch batch = check_many(design, {{key, preloads}});
            for (Eigen::Index row = 0; row < preloads.size(); ++row) {
                CAPTURE(key, row);
                const Design changed = with_dimension(design, key, preloads[row]);
                const Check full = check(changed);
                double pull = 0.0, margin = 1e9, reading = 0.0;
                for (const Beside& each : full.beside) {
                    for (const StrokeReport& stroke : each.strokes) {
                        pull = std::max(pull, *stroke.peak_pull_n);
                    }
                    margin = std::min(margin, *each.travel.yield_margin);
                    const double here = each.position("closed")->reading_loaded_mm;
                    if (std::abs(here) > std::abs(reading)) reading = here;
                }
                CHECK(batch.status[static_cast<std::size_t>(row)] == RowStatus::ok);
                CHECK(column(batch, "peak_pull_n")[row] == pull);
                CHECK(column(batch, "yield_margin")[row] == margin);
                CHECK(column(batch, "reading_loaded_closed_mm")[row] == reading);
            }
        }
    }
    CHECK_THROWS_AS(check_many(designs::whinchat(),
                               {{"blades.main.fit.preload", Eigen::ArrayXd::Constant(1, 0.9)},
                                {"fit.preload", Eigen::ArrayXd::Constant(1, 0.8)}}),
                    InvalidInput);
}

TEST_CASE("rows are the same to the last bit on any number of threads", "[batch]") {
    const std::vector<Change> changes = wild_changes(designs::heron(), 7, kRows);
    const Batch one =
        check_many(designs::heron(), changes, {.threads = 1, .chunk_rows = 256, .columns = {}});
    const Batch two =
        check_many(designs::heron(), changes, {.threads = 2, .chunk_rows = 7, .columns = {}});
    const Batch many =
        check_many(designs::heron(), changes, {.threads = 5, .chunk_rows = 1, .columns = {}});
    CHECK(same_bits(one, two));
    CHECK(same_bits(one, many));
}

TEST_CASE("asking for fewer results changes none of them", "[batch]") {
    const std::vector<Change> changes = wild_changes(designs::heron(), 8, kRows);
    const Batch all = check_many(designs::heron(), changes);
    for (const std::string& name : batch_columns()) {
        const Batch one = check_many(designs::heron(), changes,
                                     {.threads = 1, .chunk_rows = 9, .columns = {name}});
        REQUIRE(one.columns.size() == 1);
        CHECK((one.columns[0].values == column(all, name) ||
               (one.columns[0].values.isNaN() && column(all, name).isNaN()))
                  .all());
        CHECK(one.status == all.status);
    }
}

TEST_CASE("each way not to be a slip joint has its status", "[batch]") {
    const auto status = [](const Design& design, const char* key, double value) {
        return check_many(design, {{key, Eigen::ArrayXd::Constant(1, value)}}).status.front();
    };
    const Design heron = designs::heron();
    CHECK(status(heron, "fit.preload", 0.9) == RowStatus::ok);
    CHECK(status(heron, "fit.preload", -1.0) == RowStatus::invalid);
    CHECK(status(heron, "fit.preload", std::nan("")) == RowStatus::invalid);
    // A closed face far below the line of the open one is out of the spring's reach.
    CHECK(status(heron, "tang.closed", 2.5) == RowStatus::lifted_off);
    CHECK(status(heron, "tang.half_stop", 2.5) == RowStatus::lifted_off);
    CHECK(status(heron, "fit.preload", 0.0) == RowStatus::lifted_off);
    // The pad begins ahead of the pivot's foot: at open the spring pushes the blade shut.
    Design ahead = heron;
    ahead.own().pad.start_mm = 31.9;
    CHECK(status(ahead, "fit.preload", 0.9) == RowStatus::ok);
}

TEST_CASE("a batch that is stopped keeps what is done", "[batch]") {
    const Eigen::Index rows = 200000;
    const std::vector<Change> changes{{"fit.preload", Eigen::ArrayXd::LinSpaced(rows, 0.5, 1.0)}};
    int asked = 0;
    const Batch batch =
        check_many(designs::heron(), changes, {.threads = 2, .chunk_rows = 10, .columns = {}},
                   [&](std::int64_t done) {
                       ++asked;
                       return done == 0;
                   });
    CHECK_FALSE(batch.complete);
    CHECK(asked >= 1);
    std::int64_t run = 0;
    for (Eigen::Index i = 0; i < rows; ++i) {
        const bool done = batch.status[static_cast<std::size_t>(i)] != RowStatus::not_run;
        run += done;
        if (done == std::isnan(column(batch, "force_open_n")[i])) FAIL("row " << i);
    }
    CHECK(run > 0);
    CHECK(run < rows);
}

TEST_CASE("an exception of the caller ends the threads and goes on", "[batch]") {
    const std::vector<Change> changes{{"fit.preload", Eigen::ArrayXd::LinSpaced(5000, 0.5, 1.0)}};
    const auto fail = [](std::int64_t) -> bool { throw OutOfRange("the caller's own"); };
    CHECK_THROWS_AS(check_many(designs::heron(), changes, {}, fail), OutOfRange);
}

TEST_CASE("no rows are no error", "[batch]") {
    const Batch batch = check_many(designs::heron(), {{"fit.preload", Eigen::ArrayXd(0)}});
    CHECK(batch.complete);
    CHECK(batch.status.empty());
    CHECK(column(batch, "peak_pull_n").size() == 0);
}

TEST_CASE("what cannot be changed is told at once", "[batch]") {
    const Eigen::ArrayXd two = Eigen::ArrayXd::Constant(2, 1.0),
                         three = Eigen::ArrayXd::Constant(3, 1.0);
    const auto message = [](const Design& design, const std::vector<Change>& changes,
                            BatchSettings settings) {
        try {
            static_cast<void>(check_many(design, changes, settings));
        } catch (const InvalidInput& error) {
            return std::string(error.what());
        }
        return std::string("accepted");
    };
    CHECK(message(designs::wren(), {}, {}) == "changes: must name at least one dimension");
    CHECK(message(designs::wren(), {{"tang.half_stop", two}, {"tang.closd", two}}, {}) ==
          "tang.half_stop: the design has none to change\ntang.closd: is no dimension of a design");
    CHECK(message(designs::wren(), {{"fit.preload", two}, {"fit.preload", three}}, {}) ==
          "fit.preload: is given twice\nfit.preload: must have as many rows as fit.preload, 2, got "
          "3");
    CHECK(message(designs::wren(), {{"fit.preload", two}, {"fit.rear_pin_offset", two}}, {}) ==
          "fit.rear_pin_offset: states the same number as fit.preload, which is given too");
    CHECK(message(designs::wren(), {{"fit.preload", two}},
                  {.threads = -1, .chunk_rows = 0, .columns = {"pull"}}) ==
          "pull: is no result of a check\nthreads: must be at least 0, got -1\n"
          "chunk_rows: must be at least 1, got 0");
}
