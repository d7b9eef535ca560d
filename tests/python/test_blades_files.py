"""Several blades in the design file, and what is refused of them."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

import backspring as bs

BAD = tomllib.loads(Path(__file__).with_name("bad_blades.toml").read_text("utf-8"))
GOOD = BAD["good"]
ROWS = [pytest.param(row, id=row["reason"]) for row in BAD["bad"]]


def told(text: str, folder: Path) -> str:
    """What loading it says, without the file's path."""
    path = folder / "siskin.toml"
    path.write_text(text)
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    return str(refused.value).replace(str(path), "")


def test_the_text_that_is_spoiled_is_good(tmp_path: Path) -> None:
    path = tmp_path / "siskin.toml"
    path.write_text(GOOD)
    assert bs.load(path).blades == ("main", "pen", "sheep")


@pytest.mark.parametrize("row", ROWS)
def test_a_bad_value_is_told(row: dict[str, str], tmp_path: Path) -> None:
    assert GOOD.count(row["old"]) >= 1
    assert told(GOOD.replace(row["old"], row["new"], 1), tmp_path) == row["message"]


def blade_of(number: int) -> str:
    """The text of one of [[blades]]."""
    return "[[blades]]\n" + GOOD.split("[[blades]]\n")[number].partition("[targets]")[0]


def test_further_blades_written_as_one_table_are_told(tmp_path: Path) -> None:
    first, *_ = GOOD.split("[[blades]]\n")
    one = blade_of(1).replace("[[blades]]", "[blades]")
    assert told(first + one, tmp_path) == ":29: blades: must be tables, each headed [[blades]]"
    assert "blades: must be tables" in told("blades = 3\n" + first, tmp_path)


def test_five_blades_at_one_end_are_told(tmp_path: Path) -> None:
    more = "".join(blade_of(2).replace('"sheep"', f'"sheep{n}"') for n in range(3))
    message = told(GOOD.replace("[targets]", more + "[targets]"), tmp_path)
    assert message.endswith("blades: must be at most 4 at one end of the spring, got 5")


def test_all_faults_of_all_blades_are_told_at_once_in_the_order_of_the_file(
    tmp_path: Path,
) -> None:
    bad = GOOD.replace("preload = 0.45", "preload = -1").replace("closed = 4.59", "closd = 4.59")
    bad = bad.replace("pivot = 32", 'pivot = "x"', 1)
    lines = told(bad, tmp_path).splitlines()
    assert [line.split(": ")[1] for line in lines] == [
        "tang.pivot", "blades.pen.fit.preload", "blades.sheep.tang.closd",
    ]  # fmt: skip


def test_an_error_of_python_names_the_key_of_the_blade() -> None:
    design = bs.Design(**tomllib.loads(GOOD))
    for key, message in (
        ("blades.pen.tang.clsed", 'unknown key "clsed": did you mean "closed"?'),
        ("blades.wren.tang.closed", 'no blade is called "wren": known are main, pen, sheep'),
        ("blades.pen", 'needs a key, as "tang.closed", behind it'),
        ("blades.pen.width", 'unknown key "width": known are name, end, pad, tang, fit, blade'),
    ):
        with pytest.raises(bs.InvalidInput) as refused:
            design.replace(**{key: 1})
        assert f"{key}: {message}" in str(refused.value)
