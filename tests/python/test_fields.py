"""One table of limits for file, core and batch; faults as data; one meaning of a thickness."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring.design.fields import ROWS, kind_of
from backspring.units import parse, shown

ROOT = Path(__file__).resolve().parents[2]
HERON = bs.load(ROOT / "data" / "designs" / "heron.toml")
NUMBERS = {key: row for key, row in ROWS.items() if row.form is _core.Form.number}


@pytest.mark.parametrize("key", [key for key, row in NUMBERS.items() if row.in_file])
def test_a_slip_of_units_is_refused_at_once(key: str, tmp_path: Path) -> None:
    """What makes no sense is told with file, line, key, rule and value, in the file's unit."""
    row = NUMBERS[key]
    section, _, name = key.rpartition(".")
    path = tmp_path / "dunnock.toml"
    path.write_text(f'format = 1\nname = "Dunnock"\nunits = "in"\n[{section}]\n{name} = 1e10\n')
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    value = shown(parse(1e10, kind_of(row), "in"), row.quantity, "in")
    greatest = shown(row.greatest, row.quantity, "in")
    expected = f"{path}:5: {key}: must be at most {greatest}, got {value}"
    assert expected in str(refused.value).splitlines()


@pytest.mark.parametrize(
    ("key", "value", "message"),
    [
        (
            "spring.yield",
            "500 ksi",
            'must be at most 3000 MPa, got 3447.379 MPa (written "500 ksi")',
        ),
        ("spring.width", 5e-324, "must be at least 0.05 mm, got 4.940656e-324 mm"),
        ("fit.preload", "0.9 in", 'must be at most 10 mm, got 22.86 mm (written "0.9 in")'),
    ],
)
def test_nonsense_is_refused_by_its_range(key: str, value: Any, message: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        HERON.replace(**{key: value})
    assert str(refused.value) == f"{key}: {message}"


FRAMED = {
    "frame.liner_thickness": 1,
    "frame.liner_height": 12,
    "frame.liner_modulus": "110 GPa",
    "frame.scale_thickness": 3,
    "frame.scale_modulus": "12 GPa",
}


@pytest.mark.parametrize("key", [row.key for row in _core.dimensions() if not row.derived])
def test_file_core_and_batch_have_the_same_limits(key: str) -> None:
    """What a file may not hold is a row with a status in a study, and a fault of the core."""
    kicked = {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}}
    design = HERON
    if key.startswith("tang.kick"):
        design = HERON.replace(**kicked)
    if key == "tang.round_end":
        design = HERON.replace(**{"tang.half_stop": None})
    if key == "frame.seat":
        design = HERON.replace(**{key: 2e-4})
    elif key.startswith("frame."):
        design = HERON.replace(**FRAMED)
    beyond = ROWS[key].greatest * (1.0 + 1e-9)
    faults = _core.faults(_core.with_dimension(design.core, key, beyond))
    assert (key, "at_most") in {(fault.key, fault.rule) for fault in faults}
    assert bs.check_many(design, {key: [beyond]})["status"].tolist() == ["invalid"]
    with pytest.raises(bs.InvalidInput, match=re.escape(key)):
        design.replace(**{key: beyond})


def test_a_fault_is_data() -> None:
    (fault,) = _core.faults(_core.with_dimension(HERON.core, "spring.width", -2.3))
    assert (fault.key, fault.rule, fault.limits, fault.values, fault.quantity) == (
        "spring.width",
        "greater_than",
        [0.0],
        [-2.3],
        _core.Quantity.length,
    )
    assert fault.message == "must be greater than 0 mm, got -2.3 mm"
    with pytest.raises(bs.InvalidInput) as refused:
        HERON.replace(**{"spring.pad": ["1 in", "2 in"]})
    (told,) = refused.value.faults
    assert (told.rule, told.limits, told.values) == ("pad_on_spring", (36.5,), (25.4, 50.8))


def test_a_rule_is_told_in_the_units_of_the_file(tmp_path: Path) -> None:
    kestrel = (ROOT / "data" / "designs" / "kestrel.toml").read_text("utf-8")
    path = tmp_path / "kestrel.toml"
    path.write_text(
        kestrel.replace('"1 1/2 in"]\n', '"1 3/4 in"]\n').replace('width = "1/8 in"', "width = 3")
    )
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    assert [each.message for each in refused.value.faults] == [
        "must be at most 1.968504 in, got 3 in",
        "must lie on the spring, which ends at 1.5 in, got 1.09375 in to 1.75 in",
    ]


def test_one_thickness_flattens_and_a_scale_keeps_the_shape_everywhere() -> None:
    def pulls(many: bs.ManyChecks) -> list[float]:
        return [float(each) for each in many["peak_pull_n"]]

    for key, value in (("spring.thickness", 2.6), ("spring.thickness_scale", 1.03)):
        design = HERON.replace(**{key: value})
        expected = max(stroke.peak_pull_n for stroke in bs.check(design).strokes)
        assert pulls(bs.check_many(HERON, {key: [value]})) == pytest.approx([expected], rel=1e-9)
    thick = HERON.replace(**{"spring.thickness_scale": 1.5, "spring.width": 2}).to_dict()["spring"]
    assert (thick["thickness"][2], thick["width"]) == ([0.0, pytest.approx(5.7)], 2.0)


def test_sizing_by_the_scale_is_sizing_by_the_thickness_at_the_middle_pin() -> None:
    by_scale = bs.size(
        HERON, pull=12, vary="spring.thickness_scale", bounds={"spring.thickness_scale": (0.5, 2)}
    )
    by_size = bs.size(HERON, pull=12, vary="spring.thickness", bounds={"thickness": (1.9, 7.6)})
    assert by_scale.to_dict() == by_size.to_dict()
    (solution,) = by_scale.solutions
    scale = solution.sizes_mm["spring.thickness"] / 3.8
    again = HERON.replace(**{"spring.thickness_scale": scale})
    assert max(s.peak_pull_n for s in bs.check(again).strokes) == pytest.approx(12, rel=1e-6)
