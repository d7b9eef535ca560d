"""A tang of a shape of its own: restated, ground, drawn out, read back and written."""

from __future__ import annotations

import json
import math
import pickle
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.design.schema import design_schema
from backspring.outline.drawn import draw
from backspring.outline.reading import read_outline
from backspring.outline.written import write_template
from drawn_tangs import EGG, checked, reaches, restated, rows_of
from outline_pen import DEMOS, REPO, VALUES, demo


@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_restated_as_an_outline_checks_the_same(name: str) -> None:
    design = demo(name)
    for each in (design, design.replace(**{"tang.kick": None})):
        assert checked(restated(each)) == pytest.approx(checked(each), rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("key", ["tang.open", "tang.half_stop", "tang.closed"])
def test_a_gradient_is_that_of_whole_checks_where_a_face_cuts_the_outline_anew(key: str) -> None:
    """A crowned face loses its top as it falls and is raised whole as it rises."""
    design, by = demo("dotterel"), 2e-4
    sides, value = bs.gradient_sides(design), getattr(design.core.tang, f"{key[5:]}_mm")

    def readings(change: float) -> dict[str, float]:
        found = bs.check(design.replace(**{key: value + change})).positions
        return {
            f"reading_{state}_{name}_mm": getattr(found[name], f"reading_{state}_mm")
            for name in ("half_stop", "closed")
            for state in ("loaded", "unloaded")
        }

    here = readings(0.0)
    for way, step in enumerate((-by, by)):
        for figure, there in readings(step).items():
            whole = (there - here[figure]) / step
            # The slope itself changes over the step by some hundredths of that.
            assert sides[figure][key][way] == pytest.approx(whole, abs=1e-3), figure


def test_a_face_ground_is_the_shape_drawn_with_that_flat() -> None:
    design = restated(demo("heron"))
    closed = design.core.tang.closed_mm - 0.1
    ground = design.replace(**{"tang.closed": closed})
    # The corner of 0.7 mm is cut where cos of its normal is 0.6 / 0.7.
    r, edge = 0.7, math.acos(0.6 / 0.7)
    rows = rows_of(demo("heron").core.tang)
    at = max(i for i, row in enumerate(rows) if len(row) == 3)
    rows[at][2] = math.tan(0.25 * (0.5 * math.pi - edge))
    rows[at + 1] = [rows[at + 1][0] - r * math.sin(edge), -closed]
    rows[at + 2][1] = -closed
    anew = restated(demo("heron"), rows)
    assert checked(ground) == pytest.approx(checked(anew), rel=1e-9, abs=1e-9)
    taken = _core.take_off(design.core, _core.FaceDepths(closed_mm=0.1))
    assert taken.tang.closed_mm == pytest.approx(closed, abs=1e-12)


def test_fit_gradient_and_many_designs_take_an_outline() -> None:
    design = restated(demo("heron"), EGG)
    steps = bs.fit_plan(design, half_stop="0.2 mm", closed="0.3 mm", state="unloaded").to_dict()
    assert steps["plan"]
    slopes = _core.gradient(design.core)
    assert {"tang.open", "tang.closed", "tang.half_stop"} <= {*slopes.dimensions}
    assert not {"tang.corner_radius", "tang.corner_open", "tang.front"} & {*slopes.dimensions}
    reading = list(slopes.figures).index("reading_loaded_half_stop_mm")
    face = list(slopes.dimensions).index("tang.half_stop")
    step = 1e-4
    faces = 4.4 + step * np.array([-1.0, 0.0, 1.0])
    rows = bs.check_many(design, {"tang.half_stop": faces})
    along = rows["reading_loaded_half_stop_mm"]
    assert slopes.derivative[reading, face] == pytest.approx(
        (along[2] - along[0]) / (2.0 * step), rel=1e-4
    )


@pytest.mark.parametrize("suffix", [".dxf", ".svg"])
def test_an_outline_drawn_out_and_read_back_is_the_same(suffix: str, tmp_path: Path) -> None:
    design, path = restated(demo("heron"), EGG), tmp_path / f"drawn{suffix}"
    write_template(design, path)
    again = read_outline(path, values=VALUES)
    assert "outline = [" in again.text
    assert reaches(again.design) == pytest.approx(reaches(design), abs=1e-6)
    assert again.design.core.tang.half_stop_mm == pytest.approx(4.4, abs=1e-6)
    assert again.design.core.fit.preload_mm == pytest.approx(design.core.fit.preload_mm, abs=1e-6)


def test_a_kick_beside_an_outline_is_drawn_out_and_read_back(tmp_path: Path) -> None:
    kick = {"distance": 7.0, "height": 0.25, "radius": 0.5}
    design = demo("dotterel").replace(**{"tang.kick": kick, "spring.pad": [21, 35.5]})
    path = tmp_path / "drawn.dxf"
    write_template(design, path)
    again = read_outline(path, values=VALUES)
    assert reaches(again.design) == pytest.approx(reaches(design), abs=1e-6)
    assert again.design.to_dict()["tang"]["kick"] == pytest.approx(kick, abs=1e-6)
    assert again.notes == ("tang: of a kind of its own, taken as it is drawn",)


@pytest.mark.parametrize("turn", [1.0, 1j, -1.0])
@pytest.mark.parametrize("mirrored", [False, True])
def test_the_outline_table_takes_it_turned_and_mirrored(turn: complex, mirrored: bool) -> None:
    design = restated(demo("heron"), EGG)
    o = draw(design.core)

    def row(at: complex, *more: float) -> list[float]:
        place = (at.conjugate() if mirrored else at) * turn
        return [place.real, place.imag, *more]

    def chain(vertices: Any) -> list[list[float]]:
        way = -1.0 if mirrored else 1.0
        return [row(v.at_mm, *([way * v.bulge] if v.bulge else [])) for v in vertices]

    table = {
        "spring": chain(o.spring.vertices),
        "spring_holes": [row(h.center_mm, h.diameter_mm) for h in o.spring_holes],
        "tang": chain(o.tang.vertices),
        "tang_hole": row(o.tang_hole.center_mm),
        "liner": [row(at) for at in (o.pivot_mm, o.middle_mm, o.rear_mm)],
    }
    made = bs.Design(
        name="Turned",
        spring={"steel": "O1", "hardness": "45 HRC", "width": 2.3},
        outline=table,
    )
    assert reaches(made) == pytest.approx(reaches(design), abs=1e-6)


def test_hollows_are_bridged_and_told() -> None:
    rows = [*EGG[:2], [-3.2, 3.0], *EGG[2:]]
    hollow = restated(demo("heron"), rows)
    told = [notice for notice in hollow.notices if notice.code == "hollow-bridged"]
    assert len(told) == 1
    assert "is bridged" in told[0].message
    assert [*hollow.to_dict()["tang"]["outline"][2]] == [-3.2, 3.0]
    assert not [
        notice for notice in restated(demo("heron"), EGG).notices if "bridged" in notice.code
    ]


def test_an_outline_is_kept_as_it_was_written(tmp_path: Path) -> None:
    design = restated(demo("heron"), EGG)
    assert pickle.loads(pickle.dumps(design)) == design
    assert design.to_dict()["tang"]["outline"] == EGG
    assert bs.Design(**{k: v for k, v in design.to_dict().items() if k != "format"}) == design
    inch = [[row[0] / 25.4, row[1] / 25.4, *row[2:]] for row in EGG]
    text = (REPO / "data" / "designs" / "heron.toml").read_text()
    head, tail = text.split("[tang]")
    rest = tail[tail.index("\n[") :]
    as_text = ", ".join(
        f'["{u!r} in", "{w!r} in"{"".join(f", {b}" for b in more)}]' for u, w, *more in inch
    )
    path = tmp_path / "egg.toml"
    path.write_text(
        f"{head}[tang]\npivot = {design.core.tang.pivot_mm!r}\noutline = [{as_text}]\n{rest}"
    )
    assert reaches(bs.load(path)) == pytest.approx(reaches(design), abs=1e-12)
    jsonschema.validate(tomllib.loads(path.read_text()), design_schema())


def test_a_blade_beside_has_an_outline_of_its_own() -> None:
    content = demo("heron").to_dict()
    rows = rows_of(demo("heron").core.tang)
    tang = {"pivot": content["tang"]["pivot"], "outline": rows}
    # A little less proud, or which of two flats bears would be left to rounding.
    fit = {"preload": demo("heron").core.fit.preload_mm - 0.08}
    pen = {"name": "pen", "end": "front", "pad": content["spring"]["pad"], "fit": fit}
    pen["blade"] = {"nail_nick": 30.0}
    content.pop("format")
    usual = bs.Design(**content, blades=[pen | {"tang": content["tang"]}])
    drawn = bs.Design(**content, blades=[pen | {"tang": tang}])
    assert checked(drawn) == pytest.approx(checked(usual), rel=1e-8, abs=1e-8)


def test_the_command_writes_the_outline_it_reads(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drawing, written = tmp_path / "egg.dxf", tmp_path / "egg.toml"
    write_template(restated(demo("heron"), EGG), drawing)
    assert main(["outline", str(drawing), "-o", str(written), "--json"]) == 0
    notes = json.loads(capsys.readouterr().out)["data"]["notes"]
    assert "tang: of a kind of its own, taken as it is drawn" in notes
    assert main(["check", str(written)]) in (0, 1)
    assert "half-stop" in capsys.readouterr().out
