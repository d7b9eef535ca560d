#include <cmath>

#include "backspring/design/field.hpp"
#include "backspring/tolerance/tolerance.hpp"
#include "catch.hpp"
#include "designs.hpp"

using namespace backspring;

namespace {

const ResultSpread& result(const Tolerance& study, const std::string& name) {
    for (const ResultSpread& each : study.results) {
        if (each.local.name == name) return each;
    }
    throw OutOfRange("no result " + name);
}

/// Standard normal quantiles at kQuantiles: any table of the normal distribution.
constexpr std::array kNormal{-2.3263478740, -1.6448536270, -0.6744897502, 0.0,
                             0.6744897502,  1.6448536270,  2.3263478740};

const std::vector<Spread> kSpreads{
    {.key = "fit.preload", .kind = SpreadKind::normal, .size = 0.02},
    {.key = "spring.thickness_offset", .kind = SpreadKind::normal, .size = 0.01},
    {.key = "tang.half_stop", .kind = SpreadKind::uniform, .size = 0.02}};

}  // namespace

TEST_CASE("a margin follows the yield stress exactly, so its spread is normal", "[tolerance]") {
    // margin = yield / stress is linear in the yield stress, which no other result hears of.
    Design design = designs::heron();
    design.targets.yield_margin = 1.1;
    const double sd_mpa = 40.0;
    const Tolerance study =
        tolerance(design, {{.key = "spring.yield", .kind = SpreadKind::normal, .size = sd_mpa}},
                  {.rows = 1 << 13, .seed = 5, .pieces = 3, .with_shares = false, .threads = 2});
    const ResultSpread& margin = result(study, "yield_margin");
    const double stress = design.strength.yield_mpa.value / margin.local.nominal;
    const double mean = margin.local.nominal, sd = sd_mpa / stress;
    CHECK_THAT(margin.local.root_sum_square_sd, WithinRel(sd, 1e-9));
    CHECK_THAT(margin.local.worst_high - margin.local.nominal, WithinRel(3.0 * sd, 1e-9));
    // One quasi-random dimension of n points errs by about 1/n of the whole range.
    CHECK_THAT(margin.sample.mean, WithinAbs(mean, 1e-4 * sd));
    CHECK_THAT(margin.sample.sd, WithinRel(sd, 1e-3));
    for (std::size_t i = 0; i < kQuantiles.size(); ++i) {
        CHECK_THAT(margin.sample.quantiles[i], WithinAbs(mean + kNormal[i] * sd, 5e-3 * sd));
    }
    const double good = 0.5 * std::erfc((1.1 - mean) / sd / std::sqrt(2.0));
    CHECK_THAT(study.batch->share, WithinAbs(good, 2e-4));
    CHECK_THAT(study.batch->chance, WithinAbs(good * good * good, 6e-4));
    CHECK(result(study, "peak_pull_n").sample.sd == 0.0);
}

TEST_CASE("all of a margin's variance is that of the one dimension that varies", "[tolerance]") {
    const Tolerance study = tolerance(
        designs::heron(), {{.key = "spring.yield", .kind = SpreadKind::normal, .size = 40.0}},
        {.rows = 1 << 10, .seed = 5, .pieces = 1, .with_shares = true, .threads = 2});
    CHECK_THAT(result(study, "yield_margin").shares.at(0).first, WithinAbs(1.0, 1e-3));
    CHECK(result(study, "peak_pull_n").shares.empty());
}

TEST_CASE("pull follows Young's modulus exactly, uniform spread", "[tolerance]") {
    // All forces are proportional to E at a fixed Poisson's ratio.
    const double half = 4000.0;
    const Tolerance study =
        tolerance(designs::heron(),
                  {{.key = "spring.youngs_modulus", .kind = SpreadKind::uniform, .size = half}},
                  {.rows = 1 << 11, .seed = 2, .pieces = 1, .with_shares = false, .threads = 1});
    const ResultSpread& pull = result(study, "peak_pull_n");
    const double per_mpa = pull.local.nominal / 205000.0;
    CHECK_THAT(pull.local.slopes[0], WithinRel(per_mpa, 1e-7));
    CHECK_THAT(pull.local.worst_low, WithinRel(pull.local.nominal - per_mpa * half, 1e-9));
    // A uniform spread's standard deviation is its half-width over root three.
    CHECK_THAT(pull.sample.sd, WithinRel(per_mpa * half / std::sqrt(3.0), 1e-3));
    CHECK_THAT(pull.sample.quantiles[0],
               WithinRel(pull.local.nominal + per_mpa * half * (2.0 * 0.01 - 1.0), 1e-4));
    CHECK(pull.shares.empty());
}

TEST_CASE("the worst case is the worst of all corners", "[tolerance]") {
    const Design heron = designs::heron();
    const std::vector<std::string> columns = tolerance_columns(heron);
    const auto locals = local_spreads(heron, kSpreads, columns);
    const std::vector<double> middle = nominals(heron, kSpreads);
    std::vector<Change> corners;
    for (std::size_t k = 0; k < kSpreads.size(); ++k) {
        Change change{kSpreads[k].key, Eigen::ArrayXd(8)};
        for (Eigen::Index i = 0; i < 8; ++i) {
            change.values[i] = middle[k] + ((i >> k & 1) ? 1.0 : -1.0) * farthest(kSpreads[k]);
        }
        corners.push_back(change);
    }
    const Batch batch =
        check_many(heron, corners, {.threads = 1, .chunk_rows = 8, .columns = columns});
    for (std::size_t r = 0; r < columns.size(); ++r) {
        INFO(columns[r]);
        CHECK_THAT(locals[r].worst_low, WithinRel(batch.columns[r].values.minCoeff(), 1e-9));
        CHECK_THAT(locals[r].worst_high, WithinRel(batch.columns[r].values.maxCoeff(), 1e-9));
    }
}

TEST_CASE("small spreads: sample and root-sum-square agree", "[tolerance]") {
    const Tolerance study =
        tolerance(designs::heron(), kSpreads,
                  {.rows = 1 << 11, .seed = 1, .pieces = 1, .with_shares = true, .threads = 0});
    CHECK(study.rows == 1 << 11);
    CHECK(study.working == study.rows);
    for (const ResultSpread& each : study.results) {
        INFO(each.local.name);
        // What is left is curvature: a few thousandths at spreads of 2 %.
        CHECK_THAT(each.sample.sd, WithinRel(each.local.root_sum_square_sd, 1e-2));
        double first = 0.0;
        for (std::size_t k = 0; k < kSpreads.size(); ++k) {
            const double part = each.local.slopes[k] * standard_deviation(kSpreads[k]) /
                                each.local.root_sum_square_sd;
            CHECK_THAT(each.shares[k].first, WithinAbs(part * part, 3e-2));
            first += each.shares[k].first;
        }
        CHECK_THAT(first, WithinAbs(1.0, 5e-2));
    }
}

TEST_CASE("a study is the same on any number of threads and another for another seed",
          "[tolerance]") {
    const auto study = [](std::uint32_t seed, int threads) {
        return tolerance(
            designs::heron(), kSpreads,
            {.rows = 500, .seed = seed, .pieces = 1, .with_shares = true, .threads = threads});
    };
    const Tolerance one = study(1, 1), three = study(1, 3), other = study(2, 1);
    for (std::size_t r = 0; r < one.results.size(); ++r) {
        CHECK(one.results[r].sample.mean == three.results[r].sample.mean);
        CHECK(one.results[r].sample.quantiles == three.results[r].sample.quantiles);
        CHECK(one.results[r].shares[0].total == three.results[r].shares[0].total);
        CHECK(one.results[r].sample.mean != other.results[r].sample.mean);
    }
}

TEST_CASE("every target is counted, and the batch counts those who meet all", "[tolerance]") {
    Design design = designs::heron();
    const double pull =
        result(tolerance(design, kSpreads,
                         {.rows = 2, .seed = 1, .pieces = 1, .with_shares = false, .threads = 1}),
               "peak_pull_n")
            .local.nominal;
    design.targets.pull_low_n = pull;
    design.targets.pull_high_n = 1000.0;
    design.targets.yield_margin = 0.5;
    design.targets.reading_mm = 0.09;
    const Tolerance study =
        tolerance(design, kSpreads,
                  {.rows = 2048, .seed = 1, .pieces = 2, .with_shares = false, .threads = 0});
    REQUIRE(study.targets.size() == 3);
    // Half of all knives pull more than the drawing says, near enough.
    CHECK_THAT(static_cast<double>(study.targets[0].met) / 2048.0, WithinAbs(0.5, 0.03));
    CHECK(study.targets[1].met == 2048);
    CHECK(study.targets[2].met > 0);
    CHECK(study.targets[2].met < 2048);
    CHECK(study.good <= std::min(study.targets[0].met, study.targets[2].met));
    CHECK(study.good >= study.targets[0].met + study.targets[2].met - 2048);
}

TEST_CASE("a study that is stopped says how far it came", "[tolerance]") {
    const Tolerance study =
        tolerance(designs::heron(), kSpreads,
                  {.rows = 200000, .seed = 1, .pieces = 1, .with_shares = true, .threads = 2},
                  [](std::int64_t done) { return done == 0; });
    CHECK_FALSE(study.complete);
    CHECK(study.rows > 0);
    CHECK(study.rows < 200000);
    CHECK(result(study, "peak_pull_n").sample.count == study.rows);
    CHECK(result(study, "peak_pull_n").shares.empty());
}

TEST_CASE("spreads that do not fit are told at once", "[tolerance]") {
    const auto message = [](const std::vector<Spread>& spreads) {
        try {
            require_spreads(designs::wren(), spreads);
        } catch (const InvalidInput& error) {
            return std::string(error.what());
        }
        return std::string("accepted");
    };
    const auto spread = [](const char* key, double size) {
        return Spread{.key = key, .kind = SpreadKind::normal, .size = size};
    };
    CHECK(message({}) == "spreads: must name at least one dimension");
    CHECK(message({spread("spring.thickness", 0.1)}) ==
          "spring.thickness: the design has no single value to spread: spread "
          "spring.thickness_offset or spring.thickness_scale");
    CHECK(message({spread("tang.half_stop", -0.1), spread("fit", 1.0)}) ==
          "tang.half_stop: must be at least 0 mm, got -0.1 mm\n"
          "tang.half_stop: the design has no single value to spread\n"
          "fit: is no dimension of a design");
    CHECK(message({spread("fit.preload", 0.1), spread("fit.preload", 0.1)}) ==
          "fit.preload: is given twice");
    // One number in two ways: the later would silently undo the earlier.
    CHECK(message({spread("fit.rear_pin_offset", 0.1), spread("fit.preload", 0.1)}) ==
          "fit.preload: states the same number as fit.rear_pin_offset, which is given too");
    CHECK(message(std::vector<Spread>(25, spread("fit.preload", 0.1)))
              .starts_with("spreads: must be at most 24, got 25"));
    CHECK_THROWS_WITH(draw_rows(designs::heron(), kSpreads, 0, 1), "n: must be at least 1, got 0");
    Design broken = designs::heron();
    broken.spring.width_mm = 0.0;
    CHECK_THROWS_AS(tolerance(broken, kSpreads), InvalidInput);
    CHECK_THROWS_WITH(
        tolerance(designs::heron(), kSpreads,
                  {.rows = 1, .seed = 1, .pieces = 0, .with_shares = true, .threads = 0}),
        "pieces: must be at least 1, got 0");
}
