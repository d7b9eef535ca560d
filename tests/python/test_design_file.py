"""Design files: what is read of them, and the designs that come with the package."""

from __future__ import annotations

from pathlib import Path

import pytest

import backspring as bs
from backspring.design.key_lines import KeyLines

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = DESIGNS / "heron.toml"
ALL = [path for path in sorted(DESIGNS.glob("*.toml")) if len(bs.load(path).blades) == 1]


def edited(tmp_path: Path, *changes: tuple[str, str]) -> bs.Design:
    """Heron with changes of its text."""
    text = HERON.read_text()
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    path = tmp_path / "edited.toml"
    path.write_text(text)
    return bs.load(path)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_a_design_of_the_package_works(path: Path) -> None:
    check = bs.check(bs.load(path))
    assert check.design.name.casefold() == path.stem
    assert check.strokes
    assert {"lifted-off", "kick-off-pad"}.isdisjoint(each.code for each in check.notices)
    assert (check.travel.yield_margin < 1.0) == (path.stem == "bittern")


def test_bittern_takes_a_set_and_says_so() -> None:
    check = bs.check(bs.load(DESIGNS / "bittern.toml"))
    verdict = {margin.name: margin for margin in check.verdict}
    assert check.status == "fail"
    assert check.verdict[0].name == "set"
    assert "mm of set" in bs.in_words(verdict["set"])
    assert verdict["yield"].margin < 1.0 and "yields" in {each.code for each in check.notices}


def test_the_designs_of_the_package_meet_their_targets_but_two() -> None:
    verdicts = {path.stem: bs.check(bs.load(path)).status for path in ALL}
    assert {name for name, status in verdicts.items() if status == "fail"} == {"bittern", "heron"}


def test_ospreys_kick_carries_the_closed_blade_together_with_its_face() -> None:
    osprey = bs.check(bs.load(DESIGNS / "osprey.toml"))
    behind, ahead = sorted(osprey.positions["closed"].contacts_mm)
    assert behind < 0.0 < ahead


def test_numbers_and_texts_with_units_read_the_same(tmp_path: Path) -> None:
    changes = [
        ("width = 2.3 ", 'width = "2300 um" '),
        ("pivot = 32 ", 'pivot = "3.2 cm" '),
        ("[-38, 3.2]", '["-38 mm", "0.32 cm"]'),
        ('"28 g"', '"0.028 kg"'),
        ('["4 lbf", "6 lbf"]', '["64 ozf", "96 ozf"]'),
        ("spring = 0.12", 'spring = "0.12"'),
    ]
    assert edited(tmp_path, *changes) == bs.load(HERON)


def test_an_inch_file_is_the_same_design_as_its_millimetre_file(tmp_path: Path) -> None:
    in_mm = """
        format = 1
        name = "Siskin"
        units = "mm"
        spring = { steel = "1095", hardness = 46, width = 2.54, thickness = 2.54, \
rear_pin = 30.48, pad = [25.4, 35.56], youngs_modulus = "30000 ksi" }
        tang = { pivot = 30.48, open = 4.318, closed = 4.318, corner_radius = 2.032, front = 5.08 }
        fit = { preload = 0.635 }
        blade = { nail_nick = 25.4, mass = "1 oz", inertia = "0.1 oz in2" }
    """
    in_inches = """
        format = 1
        name = "Siskin"
        units = "in"
        spring = { steel = "1095", hardness = 46, width = 0.1, thickness = "1/10", \
rear_pin = 1.2, pad = [1, 1.4], youngs_modulus = 30000 }
        tang = { pivot = 1.2, open = 0.17, closed = 0.17, corner_radius = 0.08, front = 0.2 }
        fit = { preload = "25 thou" }
        blade = { nail_nick = 1, mass = 1, inertia = 0.1 }
    """
    designs = []
    for name, text in (("mm.toml", in_mm), ("in.toml", in_inches)):
        (tmp_path / name).write_text(text)
        designs.append(bs.load(tmp_path / name))
    assert designs[0] == designs[1]
    assert designs[0].sha256 == designs[1].sha256
    assert designs[0].core == designs[1].core
    assert [design.units for design in designs] == ["mm", "in"]


def test_the_rear_pin_offset_stands_for_the_preload(tmp_path: Path) -> None:
    # Similar triangles about the middle pin: preload = offset x pivot / rear pin.
    design = edited(tmp_path, ("preload = 0.9 ", "rear_pin_offset = 0.85 "))
    assert design.core.fit.preload_mm == pytest.approx(0.85 * 32 / 34, rel=1e-15)


def test_two_holes_and_offsets_stand_at_their_pins(tmp_path: Path) -> None:
    holes = "pin_hole = [2.0, 1.5]\npin_hole_offset = [0.2, -0.1] "
    design = edited(tmp_path, ("pin_hole = 2.0 ", holes))
    assert [(h.center_mm, h.diameter_mm, h.offset_mm) for h in design.core.spring.holes] == [
        (0.0, 2.0, 0.2),
        (-34.0, 1.5, -0.1),
    ]


@pytest.mark.parametrize(
    ("written", "kind", "stiffness"),
    [
        ('"clamped"', "clamped", 0.0),
        ('"2e6 N mm/rad"', "root_stiffness", 2e6),
        ("2e6", "root_stiffness", 2e6),
    ],
)
def test_a_support_without_a_rear_pin(
    written: str, kind: str, stiffness: float, tmp_path: Path
) -> None:
    changes = ('support = "two-pins"', f"support = {written}"), ("rear_pin = 34 ", "# ")
    support = edited(tmp_path, *changes).core.spring.support
    assert (support.kind.name, support.root_stiffness_nmm_per_rad) == (kind, stiffness)


def test_a_byte_order_mark_and_windows_line_ends_are_read(tmp_path: Path) -> None:
    path = tmp_path / "heron.toml"
    path.write_bytes(b"\xef\xbb\xbf" + HERON.read_bytes().replace(b"\n", b"\r\n"))
    assert bs.load(path) == bs.load(HERON)


def test_lines_of_keys_are_found_however_they_are_written() -> None:
    lines = KeyLines(
        "\n".join(
            [
                'name = "x"',
                "fit.preload = 1",
                "[ spring ]  # the beam",
                "thickness = [",
                "  [0, 1], [1, 2],",
                "  [36.5, 2.5]",
                "]",
                '"width" = 2',
                "[tang]",
                "kick = { height = 1 }",
            ]
        )
    )
    asked = ("name", "fit.preload", "spring", "spring.width", "tang.kick.height", "spring.pad", "z")
    assert [lines.line(key) for key in asked] == [1, 2, 3, 8, 10, 3, None]
