"""A shop's own habits: random effects over the logs of its knives."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring.cli import main
from backspring.fit.habits import LEAST_LOGS
from backspring.fit.log_file import write_log
from backspring.fit.random_effects import pool
from simulated_shop import HERON, HERON_FILE, TRUE, fill, next_knives, shop_knife, shop_log

KNIVES = 40


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Forty logs of one invented shop."""
    folder = tmp_path_factory.mktemp("shop")
    fill(folder, KNIVES, np.random.default_rng(5))
    return folder


@pytest.fixture(scope="module")
def habits(shop: Path) -> bs.ShopHabits:
    return bs.shop_habits(shop)


@pytest.fixture
def few(tmp_path: Path) -> Path:
    """A shop's first four logs."""
    fill(tmp_path, LEAST_LOGS - 1, np.random.default_rng(6))
    return tmp_path


def test_estimates_that_agree_have_no_spread_and_the_inverse_variance_mean() -> None:
    sds = np.array([0.1, 0.2, 0.4])
    found = pool([3.0, 3.0, 3.0], sds)
    assert found.spread == 0.0
    assert found.mean == pytest.approx(3.0)
    assert found.mean_sd == pytest.approx(np.sum(sds**-2) ** -0.5)
    near = pool([3.0, 3.05, 2.9], sds)
    assert near.spread == 0.0
    assert near.mean == pytest.approx(np.average([3.0, 3.05, 2.9], weights=sds**-2))


def test_equal_estimates_have_their_own_variance_less_that_of_each() -> None:
    """With equal s the weights drop out: t^2 = sample variance - s^2, and a plain mean."""
    values, sd = np.array([1.0, 4.0, 2.0, 7.0, 3.5]), 0.5
    found = pool(values, [sd] * 5)
    assert found.spread == pytest.approx(np.sqrt(np.var(values, ddof=1) - sd**2))
    assert found.mean == pytest.approx(values.mean())
    assert found.mean_sd == pytest.approx(np.sqrt(np.var(values, ddof=1) / 5))


def test_a_spread_is_the_one_at_which_its_moments_agree() -> None:
    """The moment equation, worked out anew: E[Q] = k - 1 + t^2 (sum w - sum w^2/sum w)."""
    rng = np.random.default_rng(8)
    values, sds = rng.normal(0.0, 2.0, 9), rng.uniform(0.2, 1.5, 9)
    found = pool(values, sds)
    weights = np.diag(sds**-2.0)
    ones = np.ones((9, 1))
    residual = weights - weights @ ones @ ones.T @ weights / weights.sum()
    assert found.chi_squared == pytest.approx(values @ residual @ values)
    expected = np.trace(residual @ np.diag(sds**2 + found.spread**2))
    assert expected == pytest.approx(found.chi_squared)
    general = np.linalg.inv(np.diag(sds**2 + found.spread**2))
    assert found.mean == pytest.approx((ones.T @ general @ values).item() / general.sum())
    assert found.mean_sd == pytest.approx(general.sum() ** -0.5)


@pytest.mark.parametrize("name", ["friction", "depth_share"])
def test_a_shop_of_forty_knives_is_found_within_its_standard_error(
    name: str, habits: bs.ShopHabits
) -> None:
    """Within two of them: one in three would lie beyond one."""
    mean, spread = TRUE[name]
    found = habits[name]
    assert found.known
    assert found.mean == pytest.approx(mean, abs=2 * found.mean_sd)
    # The spread of so many normal values, each as unsure as the spread at most.
    assert found.spread == pytest.approx(spread, abs=2 * spread * 2 / np.sqrt(2 * KNIVES))


def test_what_logs_do_not_tell_stays_common_practice(habits: bs.ShopHabits) -> None:
    assert not habits["youngs_modulus_share"].known
    assert not habits["pivot_play_mm"].known
    with_it, without = bs.Knife(HERON, habits=habits).estimate(), bs.Knife(HERON).estimate()
    for name in ("youngs_modulus_mpa", "pad_tilt_rad", "pivot_play_mm", "preload_mm"):
        assert with_it.priors[name] == without.priors[name]
    assert with_it.priors["friction"].sd < without.priors["friction"].sd
    assert "as common practice has it: tilt of the pad at open, play of the pivot, Young's" in repr(
        habits
    )


def test_the_next_knives_are_better_known_with_the_shops_habits(habits: bs.ShopHabits) -> None:
    errors = next_knives(habits, 8, np.random.default_rng(9))
    size = {name: np.sqrt(np.mean(rows**2, axis=0)) for name, rows in errors.items()}
    assert np.all(size["with"][:3] < size["without"][:3])
    # Standardised, and no surer of themselves than they may be: chi-squared of 8 at 0.1 %.
    assert np.all(size["with"][3:] < np.sqrt(26.1 / 8))


def test_fewer_than_five_logs_are_told_and_change_nothing(few: Path) -> None:
    habits = bs.shop_habits(few)
    assert not habits.enough
    assert [each.code for each in habits.notices] == ["few-logs"]
    assert "rest on 4 logs and need 5" in habits.notices[0].message
    entries = tuple(shop_log(shop_knife(np.random.default_rng(3))))
    knives = bs.Knife(HERON, habits=habits), bs.Knife(HERON)
    for each in knives:
        with each.together():
            each._entries = entries
    assert knives[0].figures.keys() == knives[1].figures.keys()
    assert all(
        knives[0].figures[name].value == figure.value and knives[0].figures[name].sd == figure.sd
        for name, figure in knives[1].figures.items()
    )


def test_logs_that_do_not_count_are_told(few: Path) -> None:
    (few / "notes.csv").write_text("a,b\n1,2\n")
    other = HERON.replace(name="Other heron", **{"tang.pivot": 32.5})
    write_log(few / "other.csv", other, shop_log(shop_knife(np.random.default_rng(3))))
    write_log(few / "begun.csv", HERON, [])
    (few / "broken.toml").write_text("name = 3")
    (few / "notes.csv.toml").write_text("not toml")
    told = {each.file: each.reason for each in bs.shop_habits(few).left_out}
    assert set(told) == {"notes.csv", "other.csv", "begun.csv", "broken.toml", "notes.csv.toml"}
    assert "not a fitting log" in told["notes.csv"]
    assert told["begun.csv"] == "nothing logged yet"
    assert (
        'its design "Other heron", as it was when the log was begun, is not in' in told["other.csv"]
    )
    assert len(bs.shop_habits(few, other).files) == LEAST_LOGS
    assert "other.csv" not in [each.file for each in bs.shop_habits(few, other).left_out]


def test_a_knife_is_no_part_of_what_is_expected_of_it(few: Path) -> None:
    path = few / "knife 01.csv"
    with pytest.raises(bs.InvalidInput, match="already count .*knife 01.csv"):
        bs.Knife(HERON, path, habits=bs.shop_habits(few))
    habits = bs.shop_habits(few, without=path)
    assert path.resolve() not in habits.files
    assert len(bs.Knife(HERON, path, habits=habits).entries) == 8


def test_the_command_prints_the_habits_and_fits_with_them(
    shop: Path, few: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["habits", str(few)]) == 0
    shown = capsys.readouterr().out
    assert shown.startswith("Habits of this shop, from 4 logs: too few, common practice stays")
    log = few / "knife 02.csv"
    words = [str(HERON_FILE), "--log", str(log), "--habits", str(few)]
    for command, codes in (("fit", {0}), ("check", {0, 1})):
        assert main([command, *words, "--json"]) in codes
        answer = json.loads(capsys.readouterr().out)
        habits = answer["data"]["knife"]["habits"]
        assert habits["logs"] == LEAST_LOGS - 2
        assert "friction" in habits["habits"]
    assert main(["fit", *words]) == 0
    assert "Expected, from 3 logs of this shop" in capsys.readouterr().out
    assert main(["fit", str(HERON_FILE), "--habits", str(few)]) == 2
    assert "--habits goes with --log FILE" in capsys.readouterr().err
    assert main(["check", str(HERON_FILE), "--habits", str(few)]) == 2
    assert main(["habits", str(few / "none")]) == 2
    assert "habits: no such folder" in capsys.readouterr().err


def test_what_a_design_states_goes_before_the_shops_habits(habits: bs.ShopHabits) -> None:
    stated = HERON.replace(**{"priors.friction": [0.1, 0.005]})
    prior = bs.Knife(stated, habits=habits).estimate().priors["friction"]
    assert prior.expected + prior.drawn == pytest.approx(0.1)
    assert prior.sd == 0.005


def test_a_copy_of_a_log_is_no_further_knife(few: Path) -> None:
    before = bs.shop_habits(few)
    first = sorted(few.glob("*.csv"))[0]
    for name in ("a copy", "z another"):
        (few / f"{name}.csv").write_bytes(first.read_bytes())
    after = bs.shop_habits(few)
    assert len(after.files) == len(before.files) == LEAST_LOGS - 1
    assert after.habits == before.habits
    assert [each.reason for each in after.left_out] == [
        "the same as a copy.csv to the last entry: a knife counts once"
    ] * 2


def test_two_knives_that_read_alike_once_are_two(few: Path) -> None:
    for name in ("one", "two"):
        knife = bs.Knife(HERON, few / f"{name}.csv")
        knife.measure(half_stop=0.3, closed=0.3, state="loaded")
    assert len(bs.shop_habits(few).files) == LEAST_LOGS + 1
