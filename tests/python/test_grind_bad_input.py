"""Questions about grinding that make no sense: every fault is told, and where."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")

BAD = [
    ("none of the faces", lambda: bs.grind(HERON), "give one of back, belly, pad; got none"),
    (
        "two faces",
        lambda: bs.grind(HERON, back=0.1, pad=0.1),
        "give one of back, belly, pad; got back and pad",
    ),
    (
        "no steel and a hole",
        lambda: bs.grind(HERON, back="3 mm"),
        "back: must be less than 0.6264706 mm, where the pin hole at -34 mm opens, got 3 mm\n"
        "back: must be less than 0.85 mm, where the pin hole at 0 mm opens, got 3 mm\n"
        "back: must be less than 2.35 mm, where next to no steel is left, got 3 mm",
    ),
    (
        "a force",
        lambda: bs.grind(HERON, belly="3 N"),
        'belly: must be a length, got "3 N", which is a force',
    ),
    ("no number", lambda: bs.grind(HERON, pad=math.nan), "pad: must be a finite number, got nan"),
    (
        "below nothing",
        lambda: bs.grind(HERON, pad=-0.1),
        "pad: must be at least 0 mm, got -0.1 mm",
    ),
    (
        "more than the preload",
        lambda: bs.grind(HERON, pad=1),
        "pad: must be at most 0.9 mm, where the preload is used up, got 1 mm",
    ),
    (
        "one station",
        lambda: bs.grind(HERON, back=0.1, region=5),
        "region: must be two stations, as (5, 30), got 5",
    ),
    (
        "a belly on the pad",
        lambda: bs.grind(HERON, belly=0.1, region=(5, 30)),
        "region: the belly ends where the pad begins, at 27 mm; the pad is a face of its own, "
        "got 5 mm to 30 mm",
    ),
    (
        "another face",
        lambda: bs.grind_table(HERON, "edge", to=0.1),  # type: ignore[arg-type]
        "face: must be \"back\", \"belly\" or \"pad\", got 'edge'",
    ),
    (
        "no step",
        lambda: bs.grind_table(HERON, "back", to=0.1, step=0),
        "step: must be greater than 0 mm, got 0 mm",
    ),
    (
        "no pull",
        lambda: bs.grind_depth(HERON, "0 N"),
        "pull: must be greater than 0 N, got 0 N",
    ),
    (
        "no nail nick",
        lambda: bs.grind_depth(
            HERON.replace(**{"blade.nail_nick": None, "targets.pull": None}), "5 N"
        ),
        "blade.nail_nick: missing: a pull needs the distance pivot to nail nick",
    ),
    (
        "a line of one place",
        lambda: bs.grind_flush(HERON, ((5, 8), (5, 8))),
        "liners: the second station must lie ahead of the first, got 5 mm and 5 mm",
    ),
    (
        "no line",
        lambda: bs.grind_flush(HERON, 8),
        "liners: must be two stations with heights, as ((-34, 8.3), (36.5, 6.95)), got 8",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "message"), [row[1:] for row in BAD], ids=[r[0] for r in BAD])
def test_a_bad_question_is_told(ask: Any, message: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        ask()
    assert str(refused.value) == message
    assert len(refused.value.faults) == len(message.splitlines())
