"""A design file that is no TOML says which line, and what to write there."""

from __future__ import annotations

from pathlib import Path

import pytest

import backspring as bs

# Invented. Long as a maker's own, with the fault at its very end or anywhere.
REMARKS = "# a remark\n" * 170
GOOD = f"""format = 1
name = "Dunnock"
units = "mm"

[spring]
steel = "O1"
hardness = "45 HRC"
width = 2.3
thickness = [
  [-38, 3.2],
  [0, 3.8],
  [36.5, 2.5],
]
rear_pin = 34
pin_hole = 2.0
pad = [27, 36.5]

{REMARKS}
[tang]
pivot = 32
open = 4.5
closed = 4.6
corner_radius = 0.7
front = 5.0

[fit]
preload = 0.9
"""
QUOTES = "write straight quotes, not curly ones"
HEAD = "a section is headed by its name in square brackets, as [fit]"
LINE = "a line is a key, = and a value, or a section's name as [fit]"
OPEN = "the list that begins here is not closed: ] is missing"
# What stands in the file, what a maker wrote for it, and what is said; an empty first is the end.
ROWS = [
    ("", "dial =", "the value is missing"),
    ("", "dial 33", LINE),
    ("", "dial = [33", OPEN),
    ("", "dial: 33", "write = between a key and its value, not a colon"),
    ("", "dial = 33 ; drawn", "a remark begins with #"),
    ("", "dial = 33 // drawn", "a remark begins with #"),
    ("", "preload = 1", "this key is given twice, first in line 197"),
    ("", "[spring]", "this section is given twice, first in line 5"),
    ("", "[the fit]", HEAD),
    ("", "[blade", HEAD),
    ("", "(blade)", HEAD),
    ('"O1"', "O1", "write text in quotes"),
    ('"45 HRC"', "\u201c45 HRC\u201d", QUOTES),
    ('"mm"', "\u2019mm\u2019", QUOTES),
    ("width = 2.3", "width = 3/32", 'write a fraction in quotes, as "3/32 in"'),
    (
        "width = 2.3",
        'width = "3/32""',
        'the inch mark ends the text: write in for it, as "3/32 in"',
    ),
    ("[-38, 3.2]", "[\u221238, 3.2]", "write a plain minus before a number, as -38"),
    ("width = 2.3", "width\u00a0= 2.3", "one of the spaces is no plain space: type it again"),
    ("width = 2.3", "spring width = 2.3", "a key is one word, as half_stop"),
    ("width = 2.3", "width = 2,3", "write a decimal point, not a comma"),
    ("width = 2.3", "width = .3", "write a digit before the decimal point, as 0.5"),
    ("width = 2.3", "width = 2.", "write a digit behind the decimal point, as 9.0"),
    ("width = 2.3", "width = 02.3", "write a number without a nought before it"),
    ("width = 2.3", "width = yes", "write true or false"),
    ("pad = [27, 36.5]", "pad = [27, 36.5", OPEN),
    ("[0, 3.8],", "[0, 3.8] [7, 3.1],", "a comma is missing between two rows"),
    (
        "[36.5, 2.5],",
        "[7, 3.1]\n  [36.5, 2.5],",
        "a comma is missing before this, in the list that begins in line 9",
    ),
]  # fmt: skip


def refused(text: str, tmp_path: Path) -> list[bs.InvalidInput]:
    path = tmp_path / "dunnock.toml"
    path.write_bytes(text.encode())
    with pytest.raises(bs.InvalidInput) as error:
        bs.load(path)
    return [error.value]


@pytest.mark.parametrize(("old", "new", "said"), ROWS)
def test_a_line_says_what_to_write(old: str, new: str, said: str, tmp_path: Path) -> None:
    assert GOOD.count(old or "\n[fit]") == 1
    text = GOOD.replace(old, new) if old else f"{GOOD}{new}\n"
    (error,) = refused(text, tmp_path)
    (fault,) = error.faults
    lines = text.split("\n")
    at = lines.index(next(line for line in lines if new.split("\n")[-1] in line)) + 1
    if not old:
        at = len(lines) - 1
    twice = said.startswith("this ")
    assert (fault.line, fault.message) == (at, said if twice else f"not valid TOML: {said}")


@pytest.mark.parametrize("ends", ["\r\n", "\r"])
def test_tabs_and_other_line_ends_are_read_alike(ends: str, tmp_path: Path) -> None:
    path = tmp_path / "dunnock.toml"
    path.write_text(GOOD)
    plain = bs.load(path)
    path.write_bytes(GOOD.replace(" = ", "\t=\t").replace("\n", ends + "\t").encode())
    assert bs.load(path) == plain


def test_a_list_that_nothing_follows_is_told_where_it_begins(tmp_path: Path) -> None:
    text = GOOD + "dial = [\n  33,\n  34,\n"
    (error,) = refused(text, tmp_path)
    (fault,) = error.faults
    assert (fault.line, fault.message) == (text.count("\n") - 2, f"not valid TOML: {OPEN}")
