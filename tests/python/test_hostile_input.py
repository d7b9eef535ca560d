"""Nested, endless and enormous input: one clear error, in bounded time and words."""

from __future__ import annotations

import gc
import re
import time
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs
from backspring.design.load import load_content
from backspring.fit.log_entry import MeasuredEntry
from backspring.fit.log_file import design_of_log, read_log, write_log
from backspring.text_cells import as_cell, from_cell

TEXT = (Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml").read_text()
HERON = load_content(TEXT.encode(), "heron.toml")
CONTENT = HERON.to_dict()
ITSELF: dict[str, Any] = {}
ITSELF["again"] = ITSELF
LIST_ITSELF: list[Any] = []
LIST_ITSELF.append(LIST_ITSELF)
_MOST_S, _MOST_CHARACTERS = 1.0, 3000


def refusal(text: str) -> str:
    # What other tests left in memory is not looked through meanwhile.
    gc.disable()
    try:
        begun = time.process_time()
        with pytest.raises(bs.InvalidInput) as refused:
            load_content(text.encode(), "a.toml")
        assert time.process_time() - begun < _MOST_S
    finally:
        gc.enable()
    assert len(str(refused.value)) < _MOST_CHARACTERS
    return str(refused.value)


def wide(value: str) -> str:
    return TEXT.replace("width = 2.3", f"width = {value}")


@pytest.mark.parametrize("deep", [13, 100, 300, 1_000, 100_000])
def test_brackets_nested_to_any_depth(deep: int) -> None:
    for text in (wide("[" * deep + "]" * deep), wide("{a=" * deep + "1" + "}" * deep)):
        assert re.fullmatch(r"a\.toml:.*(is|are) nested too deep", refusal(text))


@pytest.mark.parametrize("deep", [14, 30, 500, 100_000])
@pytest.mark.parametrize("place", ["[spring]", "[blade]", "[friction]"])
def test_a_dotted_key_of_many_parts(deep: int, place: str) -> None:
    key = ".".join(["a"] * deep)
    assert refusal(TEXT.replace(place, f"{place}\n{key} = 1")).endswith("nested too deep")
    assert refusal(f"{TEXT}\n[{key}]\n").endswith("nested too deep")


@pytest.mark.parametrize("value", [ITSELF, LIST_ITSELF])
def test_a_table_that_holds_itself(value: Any) -> None:
    for key in ("spring", "fit", "blades", "outline", "targets", "name"):
        with pytest.raises(bs.InvalidInput, match="nested too deep"):
            bs.Design(**{**CONTENT, key: value})
    for key in ("spring.width", "tang.kick", "blades", "spring.thickness"):
        with pytest.raises(bs.InvalidInput, match=f"^{key}.*nested too deep"):
            HERON.replace(**{key: value})
    with pytest.raises(bs.InvalidInput):
        bs.layout(blade=value)
    with pytest.raises(bs.InvalidInput):
        bs.measured_design({"open": value})
    with pytest.raises(bs.InvalidInput):
        bs.measured_design(value)


def test_thousands_of_faults_are_told_by_the_first_ten() -> None:
    keys = "\n".join(f"k{number} = 1" for number in range(20_000))
    lines = refusal(TEXT.replace("[spring]", f"[spring]\n{keys}")).split("\n")
    assert lines[0].startswith('a.toml:8: spring.k0: unknown key "k0": known are ')
    assert lines[9] == 'a.toml:17: spring.k9: unknown key "k9"'
    assert lines[10:] == ["and 19990 more"]


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("width = 2.3", 'width = "3 %s"' % ("m" * 200_000), "got a text of 200002 characters"),
        ("width = 2.3", "width = [%s]" % ("1," * 20_000), "must be at most 2000 rows, got 20000"),
        ('units = "mm"', "units = [%s]" % ("1," * 20_000), r"\.\.\. \(\d+ characters\)"),
        ('"O1"', '"%s"' % ("x" * 200_000), 'unknown steel "xxx'),
        ("width = 2.3", "%s = 3" % ("k" * 200_000), r"unknown key \"kkk"),
        ("width = 2.3", "\n".join(f"a{i} = 3 mm" for i in range(9000)), "and 8990 more"),
    ],
)
def test_an_enormous_value_is_told_in_few_words(old: str, new: str, told: str) -> None:
    assert re.search(told, refusal(TEXT.replace(old, new)))


def test_many_thousand_stations_are_refused() -> None:
    rows = ", ".join(f"[{-38 + number * 0.0037:.4f}, 3]" for number in range(20_000))
    text = re.sub("thickness = .*", f"thickness = [{rows}]", TEXT)
    assert refusal(text) == "a.toml:12: spring.thickness: must be at most 2000 rows, got 20000"


def test_many_blades_are_refused() -> None:
    assert "at most 20 tables, got 5000" in refusal(TEXT + "\n[[blades]]\nname = 'a'" * 5000)


def test_a_key_that_would_act_on_a_terminal_is_shown_as_its_code() -> None:
    told = refusal(TEXT.replace("[spring]", '[spring]\n"\\u001b[2J\\u202e" = 1'))
    assert r"\x1b[2J\u202e" in told and told.isprintable()


@pytest.mark.parametrize(
    ("values", "told"),
    [
        (np.ma.array([0.9, 0.8], mask=[0, 1]), "has masked values"),
        ([0.9, np.ma.masked], "row 1: is masked"),
        (np.array([True, False]), "got true and false"),
        ([True, 0.9], "row 0: must be a length, got true"),
        (np.array([0.9 + 1j]), "got complex numbers"),
        ([0.9 + 0j], "row 0: must be a length"),
        (np.array([0.9, True], dtype=object), "row 1: must be a length, got true"),
        (np.array([0.9, None]), "row 1: must be a length, got None"),
        (np.array([b"0.9"]), "got bytes"),
        (np.array(["2020-01-01"], dtype="M8[D]"), "got dates"),
        (np.zeros(2, dtype=[("a", float)]), "got records"),
        (np.array(True), "must be a length, got True"),
        (LIST_ITSELF, "one row of numbers"),
    ],
    ids=repr,
)
def test_what_is_no_number_is_not_bent_into_one(values: Any, told: str) -> None:
    with pytest.raises(bs.InvalidInput, match=f"^fit.preload: .*{told}"):
        bs.check_many(HERON, {"fit.preload": values})


@pytest.mark.parametrize("value", [True, 1j, np.ma.masked, np.True_, "1", None, [1.0]], ids=repr)
def test_a_number_without_unit_is_a_number(value: Any) -> None:
    for ask in (
        lambda: bs.sweep(HERON, value),
        lambda: bs.contact_at(HERON, value),
        lambda: bs.spring_along(HERON, value),
        lambda: bs.tolerance(HERON, n=10, wanted_share=value),
    ):
        with pytest.raises(bs.InvalidInput, match="must be a number, got"):
            ask()


def test_a_formula_in_a_name_is_text_to_a_spreadsheet(tmp_path: Path) -> None:
    names = ['=HYPERLINK("http://a.invalid")', "+1", "-1", "@a", "'=1", "''-1", "\uff1d1"]
    for name in names:
        design, path = HERON.replace(name=name), tmp_path / "log.csv"
        entries = [MeasuredEntry("loaded", 0.1, 0.2, 0.002)]
        write_log(path, design, entries)
        assert path.read_text("utf-8").split(",", 2)[2].lstrip('"').startswith(f"'{name[:1]}")
        assert design_of_log(path)[0] == name
        assert read_log(path, design) == entries
    for text in [*names, "", "'", "plain", "'quoted'", "a=b"]:
        assert from_cell(as_cell(text)) == text
        assert as_cell(text)[:1] not in {*"=+-@\t\r\uff1d"} - {""}
