"""The parts drawn in the design file itself, in place of the keys that they make."""

from __future__ import annotations

import math
import re
import tomllib
from pathlib import Path

import jsonschema
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.design.schema import design_schema
from backspring.outline.drawn import draw
from outline_pen import DEMOS, REPO, demo, numbers

HEAD = """format = 1
name = "Drawn"
units = "{units}"

[spring]
steel = "O1"
hardness = "45 HRC"
width = "2.3 mm"

[outline]
"""
OUTLINE = "[outline]\n"


def outline_of(core: _core.Design, unit_mm: float = 1.0, turn: complex = 1.0) -> dict[str, str]:
    """Draw a design's parts as the table's rows, turned, the spring away from the rest."""
    o = draw(core)

    def row(at: complex, *more: float) -> str:
        place = at * turn / unit_mm
        return str([place.real, place.imag, *more])

    away = 20.0 + 30.0j
    spring = [row(v.at_mm + away, *([v.bulge] if v.bulge else [])) for v in o.spring.vertices]
    tang = [row(v.at_mm, *([v.bulge] if v.bulge else [])) for v in o.tang.vertices]
    holes = [row(h.center_mm + away, h.diameter_mm / unit_mm) for h in o.spring_holes]
    return {
        "spring": f"[{', '.join(spring)}]",
        "spring_holes": f"[{', '.join(holes)}]",
        "tang": f"[{', '.join(tang)}]",
        "tang_hole": row(o.tang_hole.center_mm),
        "liner": f"[{', '.join(row(at) for at in (o.pivot_mm, o.middle_mm, o.rear_mm))}]",
    }


def file_of(table: dict[str, str], units: str = "mm") -> str:
    rows = "\n".join(f"{key} = {value}" for key, value in table.items())
    return HEAD.format(units=units) + rows + "\n"


def load(text: str, tmp_path: Path) -> bs.Design:
    path = tmp_path / "drawn.toml"
    path.write_text(text)
    return bs.load(path)


@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_stated_by_its_outlines_is_the_same(name: str, tmp_path: Path) -> None:
    design = load(file_of(outline_of(demo(name).core)), tmp_path)
    assert numbers(design.core) == pytest.approx(numbers(demo(name).core), rel=0.0, abs=1e-6)


def test_it_may_stand_in_inches_and_turned(tmp_path: Path) -> None:
    turn = complex(math.cos(2.0), math.sin(2.0))
    design = load(file_of(outline_of(demo("heron").core, 25.4, turn), "in"), tmp_path)
    assert numbers(design.core) == pytest.approx(numbers(demo("heron").core), rel=0.0, abs=1e-6)


def test_what_came_of_it_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    design = load(file_of(outline_of(demo("heron").core)), tmp_path)
    assert "fit.preload: 0.9 mm, from the outline" in design.defaults
    assert "spring.thickness: 2.4 mm to 3.8 mm in 6 rows, from the outline" in design.defaults
    main(["check", str(tmp_path / "drawn.toml")])
    assert "spring.pad: 27 mm and 36.5 mm, from the outline" in capsys.readouterr().out
    assert "outline" not in design.to_dict()


def test_it_is_another_way_to_say_the_same(tmp_path: Path) -> None:
    text = file_of(outline_of(demo("heron").core))
    design = load(text, tmp_path)
    ordinary = {key: each for key, each in design.to_dict().items() if key != "format"}
    assert bs.Design(**ordinary) == design
    assert design.replace(**{"tang.open": 4.55}).core.tang.open_mm == 4.55


def test_the_schema_takes_it_and_asks_for_all_keys_without_it(tmp_path: Path) -> None:
    check = jsonschema.Draft202012Validator(design_schema())
    drawn = tomllib.loads(file_of(outline_of(demo("heron").core)))
    assert [*check.iter_errors(drawn)] == []
    del drawn["outline"]
    assert any("thickness" in error.message for error in check.iter_errors(drawn))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"spring": "[[0, 0], [1, 0]]"}, r":11: outline\.spring: must be at least 3 rows"),
        ({"spring": "[[0], [1, 0], [2, 3]]"}, r"must be \[x, y\] or \[x, y, bulge\], got \[0\]"),
        ({"tang": "5"}, r":13: outline\.tang: must be at least 3 rows"),
        ({"tang": '[[0, 0], [1, 0, "1 mm"], [0, 1]]'}, "a bulge must be a plain number"),
        ({"tang": "[[0, 0], [1, nan], [0, 1]]"}, r":13: outline\.tang: y "),
        ({"tang": "[[0, 0], [1, 1e9], [0, 1]]"}, r":13: outline\.tang: y must be within 10 m"),
        ({"tang": "[[0, 0], [4, 4], [4, 0], [0, 4]]"}, r":10: outline: .*crosses itself at \(2"),
        (
            {"tang": "[[0, 0], [0, 0], [0, 0]]"},
            r":10: outline: an outline with all corners at one place",
        ),
        ({"tang": "[[0, 0], [1, 0], [2, 0]]"}, r":10: outline: "),
        ({"spring": "[[0, 0], [1, 0], [2, 0]]"}, r":10: outline: "),
        ({"spring": "[[0, 0], [9, 0, -1], [9, 9, 1], [0, 9, 1]]"}, r":10: outline: "),
        ({"tang_hole": "[0, 0, 3]"}, r":14: outline\.tang_hole: .*must be \[x, y\]"),
        ({"spring_holes": "[[0, 0, 2]]"}, r":12: outline\.spring_holes: must be 2 rows"),
        ({"liner": "[[0, 0], [1, 1]]"}, r":15: outline\.liner: must be 3 rows"),
        ({"liner": "[[0, 0], [0, 0], [1, 1]]"}, r":10: outline: .*one place"),
        ({"liner": '[["1 kg", 0], [0, 9], [1, 1]]'}, r":15: outline\.liner: x "),
        ({"lyner": "[]"}, r':16: outline\.lyner: unknown key "lyner": did you mean "liner"'),
    ],
)
def test_a_bad_table_says_which_line_and_key(
    change: dict[str, str], words: str, tmp_path: Path
) -> None:
    table = outline_of(demo("heron").core) | change
    with pytest.raises(bs.InvalidInput, match=words):
        load(file_of(table), tmp_path)


def test_the_readme_s_outline_is_a_joint_that_checks(tmp_path: Path) -> None:
    readme = (REPO / "README.md").read_text(encoding="utf-8")
    (shown,) = (each for each in re.findall(r"```toml\n(.*?)```", readme, re.S) if OUTLINE in each)
    design = load(HEAD.format(units="mm").replace(OUTLINE, shown), tmp_path)
    core = design.core
    assert core.tang.half_stop_mm == pytest.approx(4.6, abs=1e-6)
    assert core.tang.corner_open_mm == pytest.approx(0.7, abs=1e-4)
    assert (core.pad.start_mm, core.pad.end_mm) == pytest.approx((27.0, 36.5), abs=1e-3)
    # The pad lies on the open face at 4.5 mm, so the rear hole is at 4.5 + 1.63, its pin at 7.1.
    assert core.fit.preload_mm == pytest.approx((7.1 - 4.5 - 1.63) * 32.0 / 34.0, abs=1e-6)
    assert bs.check(design).stiffness_n_per_mm > 0.0


def test_what_rows_make_too_large_is_told_of_the_rows(tmp_path: Path) -> None:
    text = file_of(outline_of(demo("heron").core, 1.0 / 25.0))
    with pytest.raises(bs.InvalidInput) as refused:
        load(text, tmp_path)
    lines = text.split("\n")
    told = {fault.message.partition(",")[0]: fault for fault in refused.value.faults}
    for made, rows in (
        ("tang.closed", "outline.tang"),
        ("tang.pivot", "outline.liner"),
        ("spring.thickness", "outline.spring"),
    ):
        fault = told[f"makes {made}"]
        assert fault.key == rows
        assert fault.line is not None
        assert lines[fault.line - 1].startswith(f"{rows.partition('.')[2]} = ")
    assert told["makes fit.preload"].key == "outline"


def test_keys_that_it_says_may_not_stand_beside_it(tmp_path: Path) -> None:
    table = outline_of(demo("heron").core)
    del table["liner"]
    text = file_of(table).replace("[outline]", "thickness = 3\n[fit]\npreload = 1\n[outline]")
    with pytest.raises(bs.InvalidInput) as caught:
        load(text, tmp_path)
    told = [(fault.line, fault.key) for fault in caught.value.faults]
    assert told == [(10, "spring.thickness"), (12, "fit.preload"), (13, "outline.liner")]
