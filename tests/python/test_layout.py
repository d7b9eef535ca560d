"""A whole design for a new joint: what is asked is met and lies in the handle, or is freed."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main
from backspring.new_joint.joint import corner_for_rise, rise_of
from backspring.new_joint.relax import Relief
from backspring.new_joint.request import BOUNDS

ASKED: dict[str, Any] = {
    "blade": "80 mm",
    "handle": "95 mm",
    "height": "16 mm",
    "stock": "2.4 mm",
    "steel": "O1",
    "hardness": 46,
    "pull": "4 lbf",
}
WORDS = [word for key, each in ASKED.items() for word in (f"--{key}", str(each))]


@pytest.fixture(scope="module")
def found() -> bs.Layout:
    return bs.layout(**ASKED, name="Linnet")


def test_every_joint_is_what_its_text_says_and_meets_all(found: bs.Layout, tmp_path: Path) -> None:
    assert [each.kind for each in found.proposals][:2] == ["asked", "lighter"]
    for each in found.proposals:
        path = tmp_path / f"{each.kind}.toml"
        path.write_text(each.text, encoding="utf-8")
        check = bs.check(bs.load(path))
        names = {target.name for target in check.targets}
        assert names == {"pull", "yield_margin", "reading", "openings", "edge_gap"}
        assert all(target.met for target in check.targets)
        assert not [margin.name for margin in check.verdict if margin.word.name == "fails"]
        assert max(map(len, each.text.splitlines())) <= 80


def test_the_closed_blade_lies_in_the_handle(found: bs.Layout) -> None:
    """Half a turn about the pivot, by geometry alone."""
    content = found.proposals[0].design.to_dict()
    blade, tang, spring = content["blade"], content["tang"], content["spring"]
    ahead = blade["tip"][0] - 80.0
    assert blade["tip"][0] + 2.0 <= 95.0 - ahead + 0.2
    rim = 16.0 - spring["thickness"][-1][1] - tang["open"]
    assert blade["tip"][1] <= rim - 1.0
    assert blade["height"] + blade["edge"][0][1] - rim == pytest.approx(2.5, abs=0.11)
    assert 0.0 < ahead + tang["pivot"] + spring["rear_pin"] < 95.0 - 7.0


def test_the_other_joints_trade_pull_margin_and_length(found: bs.Layout) -> None:
    asked, lighter, other = found.proposals
    assert lighter.pull_n < 0.92 * asked.pull_n
    assert lighter.check.travel.yield_margin > asked.check.travel.yield_margin
    longer = other.sizes_mm["pivot"] > asked.sizes_mm["pivot"]
    assert other.kind == ("longer" if longer else "shorter")


def test_what_is_said_first_is_of_the_joint_that_is_chosen(found: bs.Layout) -> None:
    pulls = set()
    for place, each in enumerate(found.proposals, start=1):
        head, *rest = replace(found, chosen=place).report().split("\n\n")
        pull, margin = f"{each.pull_n:.1f} N", f"{each.check.travel.yield_margin:.2f}"
        assert head == f"Linnet: opens with {pull}, yield margin {margin}, all targets met"
        (held,) = (block for block in rest if block.startswith("What holds it"))
        assert f"only {each.ligament:.2f} of" in held
        pulls.add(pull)
    assert len(pulls) > 1


def test_bounds_hold_and_are_told_where_they_bind() -> None:
    bounds = {"preload": ("0.5 mm", "0.5 mm"), "open": ("4.5 mm", "4.5 mm")}
    joint = bs.layout(**ASKED, bounds=bounds, half_stop=False).proposals[0]
    content = joint.design.to_dict()
    assert content["fit"]["preload"] == 0.5
    assert content["tang"]["open"] == 4.5
    assert "half_stop" not in content["tang"]
    assert {"preload", "open"} <= set(joint.limits)
    for name, value in joint.sizes_mm.items():
        low, high = {**BOUNDS, "preload": (0.5, 0.5), "open": (4.5, 4.5)}[name]
        assert low - 0.02 <= value <= high + 0.02


def test_a_blade_too_long_for_its_handle_is_told_what_frees_it() -> None:
    none = bs.layout(**{**ASKED, "blade": "88 mm"})
    assert not none.found and none.status == "fail"
    # At least 4 mm from the pivot to the handle's end, twice, and 2 mm behind the tip: 88 + 10.
    assert {name for each in none.reliefs for name in each.changes} == {"blade_mm", "handle_mm"}
    for each in none.reliefs[:1]:
        freed = {name.removesuffix("_mm"): f"{to} mm" for name, (_, to) in each.changes.items()}
        assert bs.layout(**{**ASKED, "blade": "88 mm", **freed}).found


def test_the_command_writes_prints_and_refuses(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    made = tmp_path / "linnet.toml"
    words = [*WORDS, "--units", "in", "--choose", "2", "--closed-face", "kick"]
    assert main(["layout", *words, "-o", str(made)]) == 0
    told = capsys.readouterr().out.replace(str(made), "linnet.toml")
    assert max(map(len, told.splitlines())) <= 80
    assert "all targets met" in told and "lbf" in told and " mm" not in told
    assert bs.load(made).to_dict()["tang"]["kick"]["height"] > 0.0
    assert main(["check", str(made)]) == 0
    assert main(["layout", *WORDS, "-o", str(made)]) == 2
    assert main(["layout", *WORDS, "--blade", "90 mm"]) == 2
    capsys.readouterr()
    long = ["90 mm" if word == "80 mm" else word for word in WORDS]
    longer = Relief({"handle_mm": (95.0, 100.0)})
    monkeypatch.setattr("backspring.new_joint.layout.reliefs", lambda *_: (longer,))
    assert main(["layout", *long]) == 3
    assert "least changes that free it: handle 100.00 mm for 95.00 mm" in capsys.readouterr().err


def test_all_faults_are_told_at_once() -> None:
    asked = {
        **ASKED,
        "steel": "O2",
        "pull": "4 mm",
        "stock": "20 mm",
        "closed_face": "round",
        "heigth": 1,
    }
    del asked["blade"]
    with pytest.raises(bs.InvalidInput) as refused:
        bs.layout(**asked, bounds={"preloed": (1, 2), "open": (5, 4)})
    keys = {each.key for each in refused.value.faults}
    wrong = {"blade", "steel", "pull", "stock", "closed_face", "heigth"}
    assert keys == wrong | {"bounds.preloed", "bounds.open"}


def test_the_crest_of_a_square_tang_is_where_geometry_has_it() -> None:
    for open_mm, rise in ((4.6, 1.2), (5.5, 0.9)):
        corner = corner_for_rise(open_mm, rise)
        assert (open_mm - corner) * 2.0**0.5 + corner - open_mm == pytest.approx(rise)
        assert rise_of(open_mm, corner) == pytest.approx(rise)


def test_a_relief_is_as_large_as_its_changes() -> None:
    single, both = Relief({"pull_n": (20.0, 10.0)}), Relief({"a": (1.0, 2.0), "b": (2.0, 1.0)})
    assert both.size == pytest.approx(2.0**0.5 * single.size)
