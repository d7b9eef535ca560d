"""A log of many entries asks the core of each state once; what was asked is not asked again."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.fit import knife_model
from backspring.fit.ask import ask_of, place_of
from backspring.fit.causes import CAUSES, PLACE
from backspring.fit.goodness import figure_sd
from backspring.fit.knife_model import KnifeModel
from backspring.fit.learn import learn
from backspring.fit.log_entry import Entry, FigureEntry, GroundEntry, MeasuredEntry
from backspring.fit.log_rows import LogRows, ground_in

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
DIAL_MM = 0.004
DEPTH_MM = 0.01
OFF = (*["half_stop", "closed"] * 6, "back")
ONCE = (FigureEntry("pull_n", 1.0), FigureEntry("moved_mm", 0.0, 32.0, 20.0))
ALL = (
    *ONCE,
    FigureEntry("closing_pull_n", 1.0),
    FigureEntry("start_pull_n", 1.0),
    FigureEntry("thickness_mm", 0.0, 10.0),
    *ONCE,
)
ASKED = ("bench_figures", "readings_in", "hung_movement_mm", "take_off", "grind")


def log_of(figures: tuple[FigureEntry, ...]) -> list[Entry]:
    """A Heron that is ground on tang and back, and measured after every trip."""
    rng = np.random.default_rng(3)
    model = KnifeModel(HERON.core, [GroundEntry("back", None)])
    causes, entries = np.zeros(model.width), []
    causes[[PLACE["half_stop"], PLACE["closed"], PLACE["kick"]]] = -0.3
    for face in OFF:
        for state in ("unloaded", "loaded"):
            half, closed = rng.normal(model.readings(state, causes), DIAL_MM)
            entries.append(MeasuredEntry(state, half, closed, DIAL_MM))
        for each in figures:
            value = float(model.answer(ask_of(each), causes)[place_of(each)])
            shown = replace(each, value=value)
            read = float(rng.normal(value, figure_sd(shown, DIAL_MM, 1)))
            entries.append(replace(shown, value=read))
        entries.append(GroundEntry(face, None if face == "closed" else DEPTH_MM))
        causes[PLACE[face] if face in PLACE else len(CAUSES)] += DEPTH_MM
    return entries


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> Iterator[Counter[str]]:
    """How often each function of the core was called."""
    counts: Counter[str] = Counter()

    def counted(name: str) -> Any:
        call = getattr(_core, name)

        def counting(*words: Any) -> Any:
            counts[name] += 1
            return call(*words)

        return counting

    for name in ASKED:
        monkeypatch.setattr(_core, name, counted(name))
    yield counts


def rows_of(entries: list[Entry]) -> LogRows:
    model = KnifeModel(HERON.core, ground_in(entries))
    return LogRows(HERON, entries, DIAL_MM, "rear", model=model)


def test_measurements_of_one_state_share_what_is_asked(asked: Counter[str]) -> None:
    calls = []
    for figures in (ONCE, ALL):
        rows = rows_of(log_of(figures))
        start = rows.start()
        asked.clear()
        rows.residuals(start)
        calls.append(dict(asked))
    assert len(log_of(ALL)) > 100
    assert calls[1]["bench_figures"] == calls[0]["bench_figures"]
    assert calls[1]["hung_movement_mm"] == calls[0]["hung_movement_mm"]
    assert calls[1]["readings_in"] == calls[0]["readings_in"]
    # Once as it stands, once to either side of what moves a pull: no half-stop is without.
    sides = {*CAUSES} - {"hardness_hrc", "pivot_play_mm", "loaded_offset_mm"}
    states = len(OFF)
    assert calls[0]["bench_figures"] <= states * (1 + 2 * (len(sides) + 1))
    # Knives differ by a face in most that is asked: what they are built of is built once.
    assert asked["grind"] <= 2 * len(CAUSES)


def test_a_hundred_entries_take_few_steps_and_the_next_entry_fewer(asked: Counter[str]) -> None:
    *entries, following, _ = log_of(ALL)
    asked.clear()
    found = learn(HERON, entries, DIAL_MM)
    first = asked["bench_figures"]
    asked.clear()
    assert found.figures
    assert asked["bench_figures"] == 0
    rows_of(entries).residuals(found.x)
    # On both sides of a pad that lies flat.
    assert first <= 5 * asked["bench_figures"]
    asked.clear()
    learn(HERON, [*entries, following], DIAL_MM, before=found)
    assert 0 < asked["bench_figures"] <= 0.9 * first


def test_what_is_kept_changes_no_answer(monkeypatch: pytest.MonkeyPatch) -> None:
    entries = log_of(ONCE)[:11]
    found = learn(HERON, entries, DIAL_MM)
    after = learn(HERON, [*entries, *log_of(ONCE)[11:15]], DIAL_MM, before=found)
    monkeypatch.setattr(knife_model, "_ANSWERS_KEPT", 1)
    monkeypatch.setattr(knife_model, "_DESIGNS_KEPT", 1)
    for each, count in ((found, 11), (after, 15)):
        alone = learn(HERON, log_of(ONCE)[:count], DIAL_MM)
        assert np.array_equal(alone.x, each.x)
        assert np.array_equal(alone.covariance, each.covariance)
