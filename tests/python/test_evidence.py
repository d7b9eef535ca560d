"""The table of evidence: what it holds, what it says where a figure is off, what is kept of it."""

from __future__ import annotations

import json
import math
import shutil
from pathlib import Path
from types import ModuleType, SimpleNamespace
from typing import Any

import pytest

import agreement
from backspring.cli import main
from backspring.evidence import collect as collecting
from backspring.evidence import folder
from backspring.evidence.kept import kept_text, with_kept
from backspring.evidence.result import Evidence, Held, Left, evidence_of, source_name

TESTS = Path(__file__).resolve().parents[1]
PUBLISHED = sorted(TESTS.glob("published/test_*.py"))


def held(**changed: Any) -> Held:
    given = {"file": "published/test_a.py", "case": "tip", "unit": "mm", "ours": 1.0, "theirs": 1.0}
    return Held(**(given | {"allowed": 0.01, "by_share": False} | changed))


def table(*figures: Held, **more: Any) -> Evidence:
    return Evidence(figures, {each.file: "A book, p. 1" for each in figures}, **more)


def test_one_printed_figure_falsified_and_the_table_says_which(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A clone of one source; the others of its figures are still told, and nothing is kept."""
    tests = tmp_path / "tests"
    (tests / "published").mkdir(parents=True)
    for name in ("agreement.py", "conftest.py", "stations.py", "published/beam.py"):
        shutil.copy(TESTS / name, tests / name)
    shutil.copy(TESTS.parent / "pyproject.toml", tmp_path)
    text = (TESTS / "published" / "test_bansal.py").read_text(encoding="utf-8")
    (tests / "published" / "test_bansal.py").write_text(text.replace("10.71,", "10.73,"))
    (tests / "published" / "test_broken.py").write_text('"""A book."""\nassert False, "torn"\n')
    assert main(["evidence", "--tests", str(tests), "--keep", "--json"]) == 1
    said = capsys.readouterr()
    data = json.loads(said.out)["data"]
    assert [(row["case"], row["within"]) for row in data["rows"]] == [
        ("example 13.1, slope at the tip", True),
        ("example 13.1, deflection at the tip", False),
        ("example 13.2, slope at the tip", True),
        ("example 13.2, deflection at the tip", True),
    ]
    wrong = data["rows"][1]
    assert (wrong["theirs"], wrong["unit"], wrong["allowed"]) == (10.73, "mm", 0.005)
    assert wrong["difference"] == pytest.approx(10.73 - 25e3 * 3000.0**3 / (3 * 2.1e5 * 1e8))
    assert [each["test"].endswith("test_broken.py") for each in data["broken"]] == [True]
    assert "torn" in data["broken"][0]["why"]
    assert said.err.startswith("not kept") and not (tmp_path / "data").exists()


def test_a_table_in_which_all_is_within_ends_well(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    asked: list[Any] = []

    def collected(*given: Any) -> Evidence:
        asked.extend(given)
        return table(held(), held(case="wall", unit="MPa", ours=2.0, theirs=2.001))

    monkeypatch.setattr("backspring.cli.evidence.collect", collected)
    assert main(["evidence", "--tests", str(TESTS), "--quick", "--joints", "17"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("2 figures of 1 source: all within what is allowed\n\nA book, p. 1\n")
    assert max(map(len, said.splitlines())) <= 80
    assert {*PUBLISHED} < {*asked[1]} and asked[2] == 17
    assert main(["evidence", "--tests", str(TESTS)]) == 0
    assert "contact_with_stop: takes minutes: ask for it with --long" in capsys.readouterr().out


def test_what_is_kept_is_written_beside_the_tests(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("tests/published", "tests/oracle", "data"):
        (tmp_path / name).mkdir(parents=True)
    for name in ("agreement.py", "published/test_a.py"):
        (tmp_path / "tests" / name).touch()
    words = ["evidence", "--tests", str(tmp_path / "tests"), "--keep"]
    monkeypatch.setattr("backspring.cli.evidence.collect", lambda *_: table(held(ours=1.002)))
    assert main(words) == 0
    kept = tmp_path / "data" / "evidence.json"
    assert capsys.readouterr().err == f"kept in {kept} and .md\n"
    (row,) = json.loads(kept.read_text())["data"]["rows"]
    assert (row["ours"], row["difference"]) == (1.002, 0.002)
    assert "| tip, mm | 1.002 | 1 | 0.002 | 0.01 |" in kept.with_suffix(".md").read_text()
    # A figure outside leaves both as they were.
    monkeypatch.setattr("backspring.cli.evidence.collect", lambda *_: table(held(ours=1.02)))
    assert main(words) == 1
    assert capsys.readouterr().err.startswith("not kept")
    assert json.loads(kept.read_text())["data"]["rows"] == [row]


@pytest.mark.parametrize(
    ("figure", "used"),
    [
        (held(), 0.0),
        (held(ours=1.005), 0.5),
        (held(allowed=0.0), 0.0),
        (held(ours=1.1, allowed=0.0), None),
        (held(ours=None), None),
    ],
)
def test_what_is_used_of_an_allowance(figure: Held, used: float | None) -> None:
    assert figure.used == (used if used is None else pytest.approx(used))
    assert figure.within == (used is not None)
    assert table(figure).status == ("pass" if figure.within else "fail")


def test_what_is_no_number_is_outside() -> None:
    row = {"file": "published/test_a.py", "source": "A book", "case": "tip", "unit": ""}
    row |= {"ours": math.nan, "theirs": 1.0, "allowed": 1.0, "by_share": True}
    found = evidence_of([row])
    assert found.outside == found.figures and found.status == "fail"
    assert "1 of 1 figures of 1 source outside" in found.report()
    assert "OUT" in found.report() and found.to_dict()["rows"][0]["ours"] is None


def test_nothing_held_is_no_evidence() -> None:
    assert table().status == "fail"
    assert table(held(), broken=(Left("published/test_b.py", "torn"),)).status == "fail"


def test_what_was_not_run_is_kept_as_it_was(tmp_path: Path) -> None:
    (tmp_path / "published").mkdir()
    for name in ("a", "b"):
        (tmp_path / "published" / f"test_{name}.py").touch()
    files = [f"published/test_{name}.py" for name in ("a", "b", "gone")]
    old = table(*(held(file=each, ours=1.001) for each in files))
    document = {"command": "evidence", "data": old.to_dict()}
    (tmp_path / "evidence.json").write_text(kept_text(document), encoding="utf-8")
    whole = with_kept(table(held(file=files[1])), tmp_path, tmp_path)
    assert [(each.file, each.ours) for each in whole.figures] == [
        (files[0], 1.001),
        (files[1], 1.0),
    ]
    assert [*whole.sources] == files[:2]
    # A row stands in one line, and the whole is one document.
    assert json.loads(kept_text(document))["data"]["rows"][0]["difference"] == 0.001
    assert sum(line.startswith('  {"file"') for line in kept_text(document).splitlines()) == 3


def test_files_by_how_long_they_take_and_by_name() -> None:
    quick, usual, long = (folder.chosen(TESTS, *way, []) for way in ((1, 0), (0, 0), (0, 1)))  # type: ignore[arg-type]
    assert {*quick} < {*usual} < {*long}
    assert {path.parent.name for path in quick} == {"published", "oracle"}
    (found,) = folder.chosen(TESTS, False, False, ["contact_with"])
    assert found.name == "long_contact_with_stop.py" and found not in usual
    assert source_name(found.name) == "contact_with_stop"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--only", "bansl"], 'no source has bansl in its name: did you mean "bansal"?'),
        (["--quick", "--long"], "give one of --quick and --long"),
        (["--only", "bansal", "--quick"], "leave out --quick, --long"),
        (["--joints", "0"], "--joints must be 1 or more"),
        (["--quick", "--keep"], "--keep is for 500 drawn joints or more: leave out --quick"),
        (["--joints", "499", "--keep"], "--keep is for 500 drawn joints or more"),
        (["--tests", "/nowhere"], "no tests in /nowhere: the cases are in the source"),
    ],
)
def test_a_line_that_cannot_be_understood(
    words: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["evidence", *words]) == 2
    assert said in capsys.readouterr().err


def test_the_tests_are_found_from_a_folder_within(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(TESTS / "published")
    assert folder.tests_folder(None) == TESTS


def test_without_pytest_it_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(collecting.importlib.util, "find_spec", lambda _: None)
    assert main(["evidence", "--tests", str(TESTS), "--quick"]) == 2
    assert 'needs pytest: pip install "backspring[test]"' in capsys.readouterr().err


def test_without_calculix_its_sources_are_told_and_the_others_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def item(name: str, needs: bool, fixture: str = "agree") -> Any:
        module = ModuleType(name, f"A method, {name}: a case.\n\nMore of it.")
        vars(module).update(__file__=f"/t/oracle/{name}.py", NEEDS_CALCULIX=needs)
        return SimpleNamespace(fixturenames=[fixture], module=module)

    monkeypatch.setattr(agreement.shutil, "which", lambda _: None)
    told, solid, other = item("a", False), item("b", True), item("c", False, "tmp_path")
    items, left = [told, solid, other], []
    hook = SimpleNamespace(pytest_deselected=lambda items: left.extend(items))
    written = tmp_path / "rows"
    collector = agreement.Collector(written)
    collector.pytest_collection_modifyitems(SimpleNamespace(hook=hook), items)
    assert (items, left) == ([told], [solid, other])
    found = evidence_of(map(json.loads, written.read_text().splitlines()))
    assert found.not_run == (Left("oracle/b.py", "needs CalculiX (the command ccx)"),)
    assert "Not run\n  b: needs CalculiX" in found.report()


def test_where_pytest_does_not_start_it_says_why(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "tests" / "published").mkdir(parents=True)
    for name in ("tests/agreement.py", "tests/conftest.py", "tests/published/test_a.py"):
        (tmp_path / name).touch()
    assert main(["evidence", "--tests", str(tmp_path / "tests"), "--quick"]) == 2
    assert "--tests: pytest stopped: " in capsys.readouterr().err
