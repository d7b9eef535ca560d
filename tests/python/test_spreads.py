"""How tolerances are written."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring._core import SpreadKind, farthest
from backspring.many.spreads import ordinary_spreads, read_spreads

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
WREN = bs.load(DESIGNS / "wren.toml")
ALL = [bs.load(path) for path in sorted(DESIGNS.glob("*.toml"))]
ONE_BLADE = [design for design in ALL if len(design.blades) == 1]


@pytest.mark.parametrize(
    ("value", "kind", "size_mm", "farthest_mm"),
    [
        ("0.06 mm", SpreadKind.normal, 0.02, 0.06),
        ("+-0.06 mm", SpreadKind.normal, 0.02, 0.06),
        ("± 0.06", SpreadKind.normal, 0.02, 0.06),
        (0.06, SpreadKind.normal, 0.02, 0.06),
        ("sd 0.02 mm", SpreadKind.normal, 0.02, 0.06),
        ("uniform 1 thou", SpreadKind.uniform, 0.0254, 0.0254),
        (0, SpreadKind.normal, 0.0, 0.0),
    ],
)
def test_a_tolerance_is_read(
    value: Any, kind: SpreadKind, size_mm: float, farthest_mm: float
) -> None:
    (spread,) = read_spreads(HERON, {"fit.preload": value})
    assert (spread.key, spread.kind) == ("fit.preload", kind)
    assert spread.size == pytest.approx(size_mm, rel=1e-12)
    assert farthest(spread) == pytest.approx(farthest_mm, rel=1e-12)


def test_bare_numbers_are_in_the_units_asked_for() -> None:
    (spread,) = read_spreads(HERON, {"fit.preload": "sd 0.001"}, "in")
    assert spread.size == pytest.approx(0.0254)


@pytest.mark.parametrize(
    ("spreads", "message"),
    [
        ({}, "spreads: must name at least one dimension"),
        ({"preload": "1 mm"}, 'preload: unknown dimension: did you mean "fit.preload"?'),
        ({"tang.half_stop": "1 mm"}, "tang.half_stop: the design has none to change"),
        ({"fit.preload": "-0.1 mm"}, 'fit.preload: must not be below 0, got "-0.1 mm"'),
        ({"fit.preload": "sd 1 N"}, 'fit.preload: must be a length, got "1 N", which is a force'),
        ({"fit.preload": "sd"}, 'fit.preload: must be a length, got ""'),
        ({"fit.preload": "normal 1 mm"}, 'fit.preload: must be a length, got "normal 1 mm"'),
        ({"fit.preload": True}, "fit.preload: must be a length, got true"),
        ({"friction.spring": "0.1 mm"}, 'friction.spring: must be a plain number, got "0.1 mm"'),
        ({"spring.thickness": 0.1}, "spring.thickness: the design has no single value to spread"),
    ],
)
def test_a_bad_tolerance_is_told(spreads: dict[str, Any], message: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        read_spreads(WREN, spreads)
    assert str(refused.value).startswith(message)


@pytest.mark.parametrize("design", ONE_BLADE, ids=lambda design: design.name)
def test_an_ordinary_bench_can_be_spread_on_every_demo(design: bs.Design) -> None:
    spreads = ordinary_spreads(design)
    assert {"fit.preload", "spring.width"} <= {*spreads}
    tang = design.core.tang
    one_radius = tang.corner_open_mm == tang.corner_closed_mm and not tang.outline
    assert ("tang.corner_radius" in spreads) == one_radius
    assert len(read_spreads(design, spreads)) == len(spreads)
