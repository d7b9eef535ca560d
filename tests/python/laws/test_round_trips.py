"""What is written is read again: files, tables, pickles, units, templates, logs."""

from __future__ import annotations

import json
import pickle
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

import backspring as bs
from backspring.fit.log_entry import LIMITS, Entry, FigureEntry, GroundEntry, MeasuredEntry
from backspring.fit.log_file import read_log, write_log
from backspring.unit_table import UNITS
from backspring.units import parse
from law_designs import CLEARANCE, FRAME, ONE, STOP, Content, contents, designs, made
from law_figures import a_share
from outline_pen import VALUES, numbers


def toml_of(value: Any) -> str:
    """A value of a design file; JSON writes numbers, texts, lists and flags the same way."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key} = {toml_of(each)}" for key, each in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(toml_of, value)) + "]"
    return json.dumps(value)


def file_of(content: Content) -> str:
    return "\n".join(f"{key} = {toml_of(value)}" for key, value in content.items())


@given(designs())
def test_a_design_in_a_file_in_tables_and_on_a_wire(tmp_path: Path, design: bs.Design) -> None:
    path = tmp_path / "reed.toml"
    path.write_text(file_of(design.to_dict()), encoding="utf-8")
    for again in (bs.load(path), bs.Design(**design.to_dict()), pickle.loads(pickle.dumps(design))):
        assert again == design
        assert again.core == design.core
        assert again.sha256 == design.sha256
    last = design.blades[-1]
    seen = design.seen_from(last)
    assert pickle.loads(pickle.dumps(seen)).core == seen.core
    back = seen.seen_from(design.blades[0]).of_every_blade()
    assert back == design and back.core == design.core


@given(designs(kinds=(ONE,)))
def test_a_check_on_a_wire(design: bs.Design) -> None:
    check = bs.check(design)
    assert pickle.loads(pickle.dumps(check)).result == check.result


@given(st.sampled_from([name for name in UNITS if name]), st.decimals(-999, 999, places=6))
def test_a_unit_there_and_back(name: str, written: Any) -> None:
    """A number in any unit, and that of the core's own in the same unit again: one rounding."""
    unit = UNITS[name]
    held = parse(f"{written} {name}", unit.kind)
    back = (held - float(unit.shift)) / float(unit.factor)
    size = (abs(held) + abs(float(unit.shift))) / float(unit.factor)
    assert abs(back - float(written)) <= 4e-16 * (size + abs(float(written)))


@a_share(2)
@given(contents(kinds=(ONE,), without=(FRAME, STOP, CLEARANCE)))
def test_a_template_is_an_outline(tmp_path: Path, content: Content) -> None:
    """Of a joint with both pins' holes and a straight or bowed spring, as far as it is drawn."""
    spring = content["spring"]
    spring.pop("mid_line", None)
    if spring["support"] != "two-pins":
        spring |= {"support": "two-pins", "rear_pin": 24.0}
        if isinstance(spring["thickness"], list):
            spring["thickness"] = [[-28.0, spring["thickness"][0][1]], *spring["thickness"][1:]]
    spring["pin_hole"] = 0.5
    design = made(content)
    bs.write_template(design, tmp_path / "reed.dxf")
    again = bs.read_outline(tmp_path / "reed.dxf", values=VALUES).design.core
    core = design.core
    for name in ("pivot_mm", "open_mm", "closed_mm", "half_stop_mm", "front_mm"):
        drawn, read = getattr(core.tang, name), getattr(again.tang, name)
        assert read == (None if drawn is None else pytest.approx(drawn, abs=1e-5)), name
    assert again.fit.preload_mm == pytest.approx(core.fit.preload_mm, abs=1e-5)
    assert again.pad.start_mm == pytest.approx(core.pad.start_mm, abs=1e-5)
    assert len(numbers(again)) >= 15


def _within(column: str) -> st.SearchStrategy[float]:
    return st.floats(*LIMITS[column])


ENTRIES: st.SearchStrategy[list[Entry]] = st.lists(
    st.one_of(
        st.builds(
            MeasuredEntry, st.sampled_from(("loaded", "unloaded")), _within("half_stop_mm"),
            _within("closed_mm"), _within("repeatability_mm"),
        ),
        st.builds(
            GroundEntry, st.sampled_from(("half_stop", "closed", "open")),
            st.none() | _within("depth_mm"),
        ),
        st.builds(FigureEntry, st.just("pull_n"), _within("pull_n")),
        st.builds(
            FigureEntry, st.just("moved_mm"), _within("moved_mm"), st.floats(0, 36),
            _within("weight_n"),
        ),
        st.builds(FigureEntry, st.just("thickness_mm"), _within("thickness_mm"), st.floats(0, 36)),
    ),
    max_size=6,
)  # fmt: skip
HERON = bs.load(Path(__file__).resolve().parents[3] / "data" / "designs" / "heron.toml")


@given(ENTRIES)
def test_a_log_is_read_as_it_was_written(tmp_path: Path, entries: list[Entry]) -> None:
    path = tmp_path / "heron.csv"
    write_log(path, HERON, entries)
    assert read_log(path, HERON) == entries
