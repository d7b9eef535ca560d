"""A panel's sliders change the design as its lines of code do, and everything shown follows."""

from __future__ import annotations

import re
import sys
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
THICKNESS = "thickness at the middle pin"
SIZES = (THICKNESS, "preload", "hardness", "corner radius")
KEYS = ("spring.thickness_scale", "fit.preload", "spring.hardness", "tang.corner_radius")


def shown(panel: bs.Panel) -> str:
    return "".join(each.value for each in panel.box.children if isinstance(each.value, str))


def drawings(panel: bs.Panel) -> list[ElementTree.Element]:
    found = re.findall(r"<svg.*?</svg>", shown(panel), re.DOTALL)
    return [ElementTree.fromstring(each) for each in found]


def named(drawing: ElementTree.Element, tag: str) -> list[ElementTree.Element]:
    return [each for each in drawing.iter() if each.tag.endswith(tag)]


def answer_of_code(panel: bs.Panel, design: bs.Design) -> bs.Check:
    *lines, last = panel.code.rsplit("\n", 1)
    names: dict[str, Any] = {"bs": bs, "design": design}
    exec("".join(lines), names)
    check = eval(last, names)
    assert isinstance(check, bs.Check)
    return check


def test_a_panel_begins_with_the_design_itself() -> None:
    panel = bs.panel(HERON)
    assert panel.changes == {}
    assert panel.code == "bs.check(design)"
    assert panel.check.to_dict() == bs.check(HERON).to_dict()
    assert [*panel.sliders] == [*SIZES, "blade angle"]
    assert bs.check(HERON).report().splitlines()[0] in shown(panel)


@pytest.mark.parametrize(("name", "key"), [*zip(SIZES, KEYS, strict=True)])
def test_a_moved_slider_gives_what_the_plain_call_gives(name: str, key: str) -> None:
    panel = bs.panel(HERON)
    before = shown(panel)
    panel.sliders[name].value += 2 * panel.sliders[name].step
    assert [*panel.changes] == [key]
    plain = bs.check(HERON.replace(**panel.changes))
    assert panel.check.to_dict() == plain.to_dict()
    assert panel.check.to_dict() != bs.check(HERON).to_dict()
    assert answer_of_code(panel, HERON).to_dict() == plain.to_dict()
    assert plain.report().splitlines()[0] in shown(panel) != before


def test_all_sliders_moved_together_are_one_change() -> None:
    panel = bs.panel(HERON)
    for name, value in zip(SIZES, (3.9, 0.85, 46.0, 0.8), strict=True):
        panel.sliders[name].value = value
    same = {"fit.preload": 0.85, "spring.hardness": 46.0, "tang.corner_radius": 0.8}
    assert panel.changes == {"spring.thickness_scale": round(3.9 / 3.8, 5), **same}
    profile = [[x, t * round(3.9 / 3.8, 5)] for x, t in HERON.to_dict()["spring"]["thickness"]]
    changed = HERON.replace(**{"spring.thickness": profile, **same})
    pulls = [
        max(stroke.peak_pull_n for stroke in each.strokes)
        for each in (panel.check, bs.check(changed))
    ]
    assert pulls[0] == pytest.approx(pulls[1], rel=1e-9)
    assert answer_of_code(panel, HERON).to_dict() == panel.check.to_dict()


def test_in_inches_the_sliders_are_in_inches_and_the_change_is_the_same() -> None:
    panel = bs.panel(HERON, units="in")
    assert panel.sliders["preload"].description == "preload [in]"
    panel.sliders["preload"].value = 0.03
    assert panel.changes == {"fit.preload": pytest.approx(0.762)}
    said = shown(panel)
    assert "lbf" in said and "ksi" in said
    assert not re.search(r"\d (?:mm|MPa)\b", said.replace("<pre>", "").partition("<pre>")[0])


def test_a_size_that_is_refused_is_told_and_the_last_answer_stays() -> None:
    panel = bs.panel(HERON)
    panel.sliders["preload"].value = 0.8
    kept = panel.check.to_dict()
    panel.sliders["corner radius"].max = 9.0
    panel.sliders["corner radius"].value = 9.0
    assert panel.refused.startswith("tang.corner_radius")
    assert "Drawn is what worked last" in shown(panel)
    assert panel.check.to_dict() == kept
    panel.sliders["corner radius"].value = 0.7
    assert panel.refused == ""
    assert panel.check.to_dict() == kept


def test_the_joint_is_drawn_to_scale_and_the_blade_turns() -> None:
    panel = bs.panel(HERON)
    joint, curve = drawings(panel)
    rear, middle = sorted(named(joint, "circle"), key=lambda each: float(each.attrib["cx"]))[:2]
    apart = float(middle.attrib["cx"]) - float(rear.attrib["cx"])
    # Pins 34 mm apart with holes of 2 mm; places are rounded to a tenth of a pixel.
    assert apart / float(rear.attrib["r"]) == pytest.approx(34.0, rel=0.02)
    panel.sliders["blade angle"].value = 180.0
    assert panel.changes == {}
    turned, moved = drawings(panel)
    force_n = bs.contact_at(HERON, 180.0).force_n
    assert f"presses with {force_n:.1f} N; dial: flush" in "".join(turned.itertext())
    assert len(named(curve, "polyline")) == len(named(moved, "polyline"))


def test_the_last_shade_is_seen_where_the_steel_yields() -> None:
    bittern = bs.load(DESIGNS / "bittern.toml")
    for preload_mm in (None, 0.3):
        design = bittern if preload_mm is None else bittern.replace(**{"fit.preload": preload_mm})
        panel = bs.panel(design)
        joint, _ = drawings(panel)
        outlines = [each.attrib for each in named(joint, "polygon")]
        spring = {each["fill"] for each in outlines if each["stroke"] == each["fill"]}
        yields = panel.check.travel.yield_margin < 1.0
        assert yields == (preload_mm is None)
        assert (outlines[-1]["fill"] in spring) == yields


def test_a_hardness_takes_the_place_of_a_temper() -> None:
    tempered = HERON.replace(
        **{"spring.hardness": None, "spring.temper": "515 C", "spring.temper_time": "2 h"}
    )
    panel = bs.panel(tempered)
    panel.sliders["hardness"].value = 50.0
    assert panel.refused == ""
    assert panel.check.steel["hardness_hrc"] == 50.0
    assert answer_of_code(panel, tempered).to_dict() == panel.check.to_dict()


def test_one_of_several_blades_has_a_panel_and_all_at_once_have_none() -> None:
    turnstone = bs.load(DESIGNS / "turnstone.toml")
    with pytest.raises(bs.InvalidInput, match=r'give one of them, design.seen_from\("long"\) or'):
        bs.panel(turnstone)
    pen = turnstone.seen_from("pen")
    panel = bs.panel(pen)
    panel.sliders["preload"].value += 0.05
    assert panel.check.to_dict() == bs.check(pen.replace(**panel.changes)).to_dict()


def test_without_the_library_of_widgets_one_line_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "ipywidgets", None)
    with pytest.raises(bs.InvalidInput, match=r'pip install "backspring\[notebook\]"'):
        bs.panel(HERON)
