"""The log of a knife with several blades: entries by blade, one file, plans of all of them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main
from backspring.fit.beside import entries_of
from backspring.fit.blades_of_log import plan_of_blades
from backspring.fit.log_entry import GroundEntry, MeasuredEntry

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
PATH = str(DESIGNS / "turnstone.toml")
TURNSTONE = bs.load(PATH)
LONG, PEN = TURNSTONE.seen_from("long"), TURNSTONE.seen_from("pen")
FINE = "0.002 mm"


def read_both(path: Path) -> None:
    long = bs.Knife(LONG, path)
    long.measure(half_stop="0.3 mm", closed="0.25 mm", state="loaded", repeatability=FINE)
    bs.Knife(PEN, path).measure(closed="0.2 mm", state="loaded", repeatability=FINE)


def test_entries_carry_the_name_of_their_blade(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    read_both(path)
    lines = path.read_text().splitlines()
    assert lines[0].startswith("backspring fitting log,4,Turnstone,")
    assert lines[1].endswith(",weight_n,blade")
    assert [line.rpartition(",")[2] for line in lines[2:4]] == ["long", "pen"]
    assert bs.Knife(PEN, path).entries == (MeasuredEntry("loaded", None, 0.2, 0.002, "pen"),)
    assert len(bs.Knife(PEN, path).logged) == 2


def test_a_log_of_an_older_format_is_the_first_blades(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    read_both(path)
    lines = path.read_text().replace(" log,4,", " log,3,").splitlines()
    old = [lines[0], *(line.rpartition(",")[0] for line in lines[1:3]), "end,1"]
    path.write_text("\n".join(old) + "\n")
    assert bs.Knife(LONG, path).entries == (MeasuredEntry("loaded", 0.3, 0.25, 0.002, "long"),)
    assert bs.Knife(PEN, path).entries == ()


def test_a_log_of_one_blade_keeps_its_format(tmp_path: Path) -> None:
    knife = bs.Knife(bs.load(DESIGNS / "wren.toml"), tmp_path / "log.csv")
    knife.measure(closed="0.1 mm", state="loaded")
    assert (tmp_path / "log.csv").read_text().startswith("backspring fitting log,3,")


@pytest.mark.parametrize(
    ("was", "now", "told"),
    [
        (",pen\n", ",pin\n", ':4: damaged: no blade is called "pin": known are long, pen'),
        (",0.2,0.002", "0.1,0.2,0.002", ":4: damaged: no half-stop expected"),
        (",,,pen\n", ",pen\n", ":4: damaged: 13 columns expected, got 11"),
    ],
)
def test_a_damaged_line_of_a_blade_is_refused(
    tmp_path: Path, was: str, now: str, told: str
) -> None:
    path = tmp_path / "log.csv"
    read_both(path)
    path.write_text(path.read_text().replace(was, now, 1))
    before = path.read_bytes()
    with pytest.raises(bs.InvalidInput) as refused:
        bs.Knife(LONG, path)
    assert told in str(refused.value)
    assert path.read_bytes() == before


def test_undo_takes_the_last_entry_whoevers_it_is(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    read_both(path)
    assert main(["fit", PATH, "--log", str(path), "--undo"]) == 0
    assert [entry.blade for entry in bs.Knife(LONG, path).logged] == ["long"]
    bs.Knife(LONG, path).undo()
    assert bs.Knife(LONG, path).logged == ()


def test_a_knife_of_several_blades_is_one_of_them() -> None:
    with pytest.raises(bs.InvalidInput, match="has several blades: say which"):
        bs.Knife(TURNSTONE)


def test_a_plan_of_the_log_is_that_of_its_readings(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    read_both(path)
    of_log = plan_of_blades(bs.Knife(PEN, path))
    read = {"long": {"half_stop": "0.3 mm", "closed": "0.25 mm"}, "pen": {"closed": "0.2 mm"}}
    plan = bs.fit_plan(TURNSTONE, read, state="loaded", repeatability=FINE)
    assert all(notice.values["blade"] in plan.blades for notice in of_log.notices)
    for name, each in plan.blades.items():
        removed = of_log.blades[name].result.removed
        # Half of what a reading repeats to: what is expected of the knife draws it so far.
        assert removed.closed_mm == pytest.approx(each.result.removed.closed_mm, abs=0.001)
        assert removed.half_stop_mm == pytest.approx(each.result.removed.half_stop_mm, abs=0.001)


def test_each_blade_is_estimated_among_the_others_as_they_are(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    read_both(path)
    found = bs.Knife(LONG, path).estimate()
    pen = next(blade for blade in found.now.blades if blade.name == "pen")
    alone = bs.Knife(PEN, path).estimate().now.blades[0]
    # The pen's own entries count with the long blade as drawn: its 0.25 mm move them by 0.005 mm.
    assert pen.tang.closed_mm == pytest.approx(alone.tang.closed_mm, abs=0.005)
    assert pen.tang.closed_mm > PEN.core.tang.closed_mm + 0.15


def test_what_comes_off_the_spring_counts_for_every_blade() -> None:
    stated = (
        GroundEntry("back", 0.02, 5.0, 20.0, blade="long"),
        GroundEntry("back", 0.01, blade="long"),
        GroundEntry("closed", 0.1, blade="long"),
    )
    assert entries_of(LONG, stated) == stated
    # One pin between them: what lies ahead of it for one blade lies behind it for the other.
    assert entries_of(PEN, stated) == (
        GroundEntry("back", 0.02, -20.0, -5.0, blade="long"),
        GroundEntry("back", 0.01, blade="long"),
    )


def test_every_command_takes_a_log_by_blade(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "log.csv"
    read_both(path)
    questions = {
        "check": [],
        "grind": ["--remove", "0.05"],
        "size": ["--pull", "7 N", "--vary", "fit.preload"],
        "tolerance": ["--n", "64"],
    }
    for command, more in questions.items():
        words = [command, PATH, "--log", str(path), *more, "--json"]
        assert main([*words, "--blade", "pen"]) in (0, 1), command
        data = json.loads(capsys.readouterr().out)["data"]
        assert data["knife"]["now"]["closed_loaded_mm"] == pytest.approx(0.2, abs=0.002)
        if command == "tolerance":
            assert main(words) == 2
            assert "say whose: --blade long or pen" in capsys.readouterr().err
            continue
        assert main(words) in (0, 1), command
        data = json.loads(capsys.readouterr().out)["data"]
        assert {name for name, each in data["blades"].items() if "knife" in each} == {"long", "pen"}


def test_entries_of_several_blades_say_whose_they_are(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    log = ["--log", str(tmp_path / "log.csv")]
    assert main(["fit", PATH, *log, "--closed", "0.1", "--state", "loaded"]) == 2
    assert "blade: say whose: --blade long or pen" in capsys.readouterr().err
    assert not (tmp_path / "log.csv").exists()
    words = ["fit", PATH, *log, "--blade", "pen", "--closed", "0.1", "--state", "loaded", "--json"]
    assert main(words) == 0
    data = json.loads(capsys.readouterr().out)["data"]
    assert {row["blade"] for row in data["plan"]} == {"pen"}
    assert data["blades"]["pen"]["knife"]["entries"] == 1


def test_blades_side_by_side_are_learned_where_one_takes_over_from_the_other() -> None:
    """Slopes jump there, and no search comes to rest; two that stop alike are believed."""
    knife = bs.load(DESIGNS / "sanderling.toml")
    clip = bs.Knife(knife.seen_from("clip"))
    clip.measure(half_stop=0.253, closed=0.261, state="unloaded")
    sheep = clip.blades["sheep"]
    sheep.measure(half_stop=0.206, closed=0.335, state="unloaded")
    with sheep.together():
        sheep.ground("half_stop", 0.018)
        sheep.ground("closed")
        sheep.measure(half_stop=0.168, closed=0.193, state="loaded")
    found = sheep.estimate()
    # As sure as the dial: 0.004 mm, three of them.
    assert found.figures["half_stop_loaded_mm"].value == pytest.approx(0.168, abs=0.012)
    assert found.figures["closed_loaded_mm"].value == pytest.approx(0.193, abs=0.012)
