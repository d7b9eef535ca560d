"""The numbers of every demo's check stand as they are written down.

They change only where a fault of the mechanics is mended, and then on purpose:
`python tests/python/test_golden_numbers.py` writes them anew. What compilers and mathematical
libraries may differ by is some 1e-15 in each step, and a peak's place is found to 1e-9 of its own.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import backspring as bs

ROOT = Path(__file__).resolve().parents[2]
GOLDEN = ROOT / "tests" / "golden" / "check_numbers.json"
ALIKE = 1e-9


def numbers(value: Any, path: str = "") -> Iterator[tuple[str, float]]:
    """Every number of plain data under its path; rows that have a name go by it."""
    if isinstance(value, dict):
        for key, each in value.items():
            yield from numbers(each, f"{path}/{key}")
    elif isinstance(value, list):
        for place, each in enumerate(value):
            name = each.get("name", place) if isinstance(each, dict) else place
            yield from numbers(each, f"{path}/{name}")
    elif isinstance(value, int | float) and not isinstance(value, bool):
        yield path, float(value)


def checked(design: Path) -> dict[str, float]:
    return dict(numbers(bs.check(bs.load(design)).to_dict()))


def designs() -> list[Path]:
    return sorted((ROOT / "data" / "designs").glob("*.toml"))


@pytest.mark.parametrize("design", designs(), ids=lambda path: path.stem)
def test_numbers_of_a_demo_stand(design: Path) -> None:
    held = json.loads(GOLDEN.read_text("utf-8"))[design.stem]
    now = checked(design)
    assert {path: now.get(path) for path in held} == pytest.approx(held, rel=ALIKE, abs=ALIKE)


if __name__ == "__main__":
    GOLDEN.write_text(
        json.dumps({path.stem: checked(path) for path in designs()}, indent=1) + "\n", "utf-8"
    )
