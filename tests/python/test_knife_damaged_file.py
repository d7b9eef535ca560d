"""A damaged log is refused with its line, and left alone."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

import backspring as bs
from knife_texts import BY_NAME, GOOD, HERON, LONG


def cut(line: str, new: str) -> Callable[[str], str]:
    return lambda text: text.replace(line, new, 1)


DAMAGED: list[tuple[str, Callable[[str], str], str]] = [
    ("empty", lambda text: "", ':1: not a fitting log: must begin with "backspring fitting log"'),
    ("another file", cut("backspring", "x"), ':1: not a fitting log: must begin with "backspring'),
    ("later format", cut("log,3", "log,5"), ":1: this version reads formats 1 to 4, got 5"),
    (
        "no fingerprint",
        lambda _: cut("log,1", "log,2")(BY_NAME),
        ":1: damaged: format, name and fingerprint of",
    ),
    ("another knife", lambda _: cut("Heron", "Wren")(BY_NAME), ':1: this log is of the design "Wr'),
    ("another shape", cut(HERON.shape_sha256, "0" * 64), ':1: spring, tang or fit of "Heron"'),
    ("heads changed", cut("what,", "which,"), ":2: damaged: the columns' names must be what,state"),
    ("end cut", cut("end,2\n", ""), ":4: damaged: the file ends here, its last line is missing"),
    (
        "line lost",
        cut("ground,,,,,half_stop,0.1,,,,,\n", ""),
        ":4: damaged: 1 entries stand before",
    ),
    ("more after the end", lambda text: text + "end,2\n", ":5: damaged: 2 entries stand before"),
    ("cut in a line", cut(",0.31,0.002,,,,,,,\n", "\n"), ":3: damaged: 12 columns expected, got 3"),
    ("no number", cut("0.31", "0.3l"), ':3: damaged: closed_mm must be a number, got "0.3l"'),
    ("not finite", cut("0.31", "inf"), ':3: damaged: closed_mm must be a number, got "inf"'),
    ("far reading", cut("0.31", "31"), ":3: damaged: closed_mm must be from -3 mm to 3 mm, got 31"),
    ("far depth", cut("p,0.1", "p,-0.1"), ":4: damaged: depth_mm must be from 0 mm to 3 mm, got -"),
    (
        "far spread",
        cut("0.002", "0.2001"),
        ":3: damaged: repeatability_mm must be from 0 mm to 0.2",
    ),
    ("no reading", cut("0.3,0.31", ","), ":3: damaged: a reading expected"),
    ("unknown entry", cut("half_stop,0", "nose,0"), ":4: damaged: no entry of a log of this tang"),
    ("no such face", cut("half_stop,0", "kick,0"), ":4: damaged: no entry of a log of this tang"),
    ("binary", lambda text: text + "\x00\ud800", ": not a fitting log: no text in UTF-8"),
]

DAMAGED += [
    (name, lambda _, spoil=spoil: spoil(LONG), message)  # type: ignore[misc]
    for name, spoil, message in (
        (
            "half a stretch",
            cut("-30.0", ""),
            ":6: damaged: a stretch of the back or belly has two end",
        ),
        (
            "no station",
            cut("32.0", ""),
            ":7: damaged: station_mm goes with moved_mm, thickness_mm, gap_mm",
        ),
        ("no weight", cut("19.6", ""), ":7: damaged: weight_n goes with moved_mm"),
        (
            "far pull",
            cut("15.0", "1500"),
            ":9: damaged: value must be from 0.01 N to 1000 N, got 1500",
        ),
    )
]


@pytest.mark.parametrize(
    ("spoil", "message"), [row[1:] for row in DAMAGED], ids=[row[0] for row in DAMAGED]
)
def test_a_damaged_log_is_refused_with_its_line_and_left_alone(
    spoil: Callable[[str], str], message: str, tmp_path: Path
) -> None:
    path = tmp_path / "log.csv"
    content = spoil(GOOD).encode(errors="surrogatepass")
    path.write_bytes(content)
    with pytest.raises(bs.InvalidInput) as refused:
        bs.Knife(HERON, path)
    assert str(refused.value).startswith(str(path) + message)
    assert path.read_bytes() == content
