"""Sentences are written from the numbers of the tables, in one system of units at a time."""

from __future__ import annotations

import io
import pickle
import re
from collections.abc import Callable, Iterator
from contextlib import redirect_stderr, redirect_stdout
from itertools import product
from pathlib import Path
from string import Formatter
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.notice import Notice, from_core
from backspring.report.check import check_report
from backspring.report.display import STYLES, Figure
from backspring.report.margin_sentences import BEARERS, MARGINS, NOTCHES
from backspring.report.refusal_sentences import ENDS
from backspring.report.sentences import SENTENCES, margin_sentence
from backspring.report.tables import TextTable
from backspring.report.verdict import amounts, label
from backspring.units import System

DESIGNS = sorted((Path(__file__).resolve().parents[2] / "data" / "designs").glob("*.toml"))
SYSTEMS: tuple[System, ...] = ("mm", "in")
COMMANDS = (
    ("check", "{}", "--all"),
    ("compare", "{}", "--ground", "back", "0.1 mm"),
    ("load", "{}", "--lever", "150 mm"),
    ("grind", "{}", "--flush"),
    ("grind", "{}", "--face", "back", "--remove", "0.1 mm"),
    ("grind", "{}", "--to-pull", "900 N"),
    ("grind", "{}", "--to-pull", "0.3 N"),
    ("size", "{}", "--pull", "900 N", "--vary", "fit.preload"),
    ("size", "{}", "--pull", "9 N", "--yield-margin", "1.1"),
    ("size", "{}", "--pull", "9 N", "--taper", "1.5 mm"),
    ("fit", "{}"),
    ("fit", "{}", "--after-back", "0.1 mm"),
    ("fit", "{}", "--half-stop", "0.05 mm", "--closed", "0.01 mm", "--state", "loaded"),
    ("fit", "{}", "--closed", "0.01 mm", "--state", "loaded"),
    ("tolerance", "{}", "--n", "8"),
)
# What of these takes long.
DEAR = ("check", "check_many", "propose_taper", "size", "sum_up", "error_budget", "levers")
# A number with its unit, or a column's head that ends in one.
FOREIGN = {
    "in": re.compile(r"(?<![\w.])(?:mm|MPa|N|mJ|m/s|N mm|N/mm|J|C)(?![\w.=])"),
    "mm": re.compile(r"(?<![\w.])(?:ksi|lbf|thou|ft/s|F)(?![\w.=])|\d in\b"),
}
FIGURE = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) (MPa|ksi|mm|thou|in|HRC)\b")


def ids(path: Path) -> str:
    return path.stem


def printed(words: list[str]) -> str:
    """Everything a command prints, on either stream."""
    text = io.StringIO()
    with redirect_stdout(text), redirect_stderr(text):
        main(words)
    return text.getvalue()


def prose(text: str) -> Iterator[str]:
    """Lines that speak; what stays of a design file is pasted as it stands there, to its digits."""
    for block in text.split("\n\n"):
        if "n the design file" not in block.partition("\n")[0]:
            yield from block.splitlines()


def _told_apart(word: Any) -> bytes:
    """Write a word of a question; rows and what was worked out of them follow from the others."""
    try:
        return pickle.dumps(word)
    except TypeError:
        return type(word).__name__.encode()


def remembered(ask: Callable[..., Any]) -> Callable[..., Any]:
    """A function of the core that is asked the same thing once; it knows no units."""
    said: dict[bytes, Any] = {}

    def asked(*words: Any, **named: Any) -> Any:
        key = b" ".join(map(_told_apart, (*words, *named.items())))
        if key not in said:
            said[key] = ask(*words, **named)
        return said[key]

    return asked


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_no_report_mixes_units(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in DEAR:
        monkeypatch.setattr(_core, name, remembered(getattr(_core, name)))
    everything = {}
    for units, words in product(SYSTEMS, COMMANDS):
        # Readings are those of one blade.
        whose = ["--blade", bs.load(path).blades[0]] if "--closed" in words else []
        text = printed([word.format(path) for word in words] + [*whose, "--units", units])
        everything[units, words] = [line for line in prose(text) if FOREIGN[units].search(line)]
    assert {words: lines for words, lines in everything.items() if lines} == {}


@pytest.mark.parametrize("units", SYSTEMS)
def test_no_page_on_a_temper_mixes_units(units: System) -> None:
    for words in (["O1", "--temper", "950 C"], ["1095", "--temper", "420 C", "--time", "99 h"]):
        line = printed(["steels", *words, "--units", units]).strip()
        assert not FOREIGN[units].search(line) and "known from" in line
    page = printed(["steels", "5160", "--temper", "300 C", "--units", units])
    page = page.partition("From")[0]  # what follows are the sources' own words
    assert not re.search(r"\d F\b" if units == "mm" else r"\d C\b", page)


@pytest.mark.parametrize("units", SYSTEMS)
def test_no_page_on_a_log_mixes_units(tmp_path: Path, units: System) -> None:
    log = ["fit", str(DESIGNS[1]), "--log", str(tmp_path / "heron.csv"), "--units", units]
    for reading in ("0.300 mm", "0.314 mm"):
        both = ["--half-stop", reading, "--closed", reading]
        text = printed([*log, *both, "--state", "unloaded"])
    assert "not known yet" in text and "readings scatter by" in text
    assert [line for line in prose(text) if FOREIGN[units].search(line)] == []


@pytest.mark.parametrize("units", SYSTEMS)
def test_no_page_on_an_influence_mixes_units(units: System) -> None:
    page = bs.influence(bs.load(DESIGNS[1])).report(units)
    assert [line for line in prose(page) if FOREIGN[units].search(line)] == []


def test_an_influence_in_inches_is_that_of_a_thou_off_a_tenth_of_an_inch() -> None:
    found = bs.influence(bs.load(DESIGNS[1]))
    # 0.1 mm off one mm is 3.937 thou off 0.03937 in.
    wanted = found["peak_pull_n"].min() / 4.4482216152605 / 3.93700787 * (0.1 / 0.0393700787)
    shown = re.search(r": (-[\d.]+) lbf for 1 thou off 0.1 in", found.report("in"))
    assert shown is not None and float(shown[1]) == pytest.approx(wanted, abs=5.1e-5)


def near(a: float, b: float) -> bool:
    return abs(a - b) <= 0.004 * abs(b)


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_a_sentence_and_its_row_agree_to_the_printed_digit(path: Path, units: System) -> None:
    design = bs.load(path)
    for blade in design.blades:
        sentences_agree(bs.check(design.seen_from(blade)), units)


def sentences_agree(check: bs.Check, units: System) -> None:
    (table,) = (
        block
        for block in check_report(check, units, everything=True).blocks
        if isinstance(block, TextTable) and block.title.startswith("Verdict")
    )
    seen = 0
    for margin, row in zip(check.verdict, table.rows, strict=True):
        assert row[:4] == (label(margin), margin.word.name, *amounts(margin, units))
        sentence = re.sub(r"station [\d.]+ \w+", "", margin_sentence(margin, units))
        for value, unit in FIGURE.findall(sentence):
            cells = [cell.partition(" ") for cell in row[2:4]]
            close = [
                text for text, _, of in cells if of == unit and near(float(value), float(text))
            ]
            assert value in close or not close
            seen += value in close
    assert seen >= len(check.verdict) - 2


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_every_margin_says_something_in_either_system(path: Path, units: System) -> None:
    design = bs.load(path)
    for blade in design.blades:
        for margin in bs.check(design.seen_from(blade)).verdict:
            sentence = margin_sentence(margin, units)
            assert len(sentence) > 20 and "{" not in sentence


def test_every_kind_of_margin_has_a_sentence_and_none_is_left_over() -> None:
    names = {_core.Margin(kind=kind).name for kind in _core.MarginKind}
    assert names == set(MARGINS)
    assert set(NOTCHES) < names
    assert {bearer.name.replace("_", "-") for bearer in _core.Bearer} == set(BEARERS)
    assert len(ENDS) == 3


def made_in_python() -> set[str]:
    """Codes that the package's own files make notices with."""
    package = Path(bs.__file__).parent
    text = "\n".join(path.read_text(encoding="utf-8") for path in package.rglob("*.py"))
    return set(re.findall(r'\bNotice\(\s*"([a-z-]+)"', text))


def test_every_code_has_a_sentence_and_every_sentence_a_code() -> None:
    of_the_core = {_core.name_of(code) for code in _core.NoticeCode}
    assert not of_the_core & made_in_python()
    assert of_the_core | made_in_python() == set(SENTENCES)


def test_a_template_names_a_kind_for_every_number() -> None:
    kinds = set(STYLES["mm"])
    for sentence in SENTENCES.values():
        if isinstance(sentence, str):
            for _, name, kind, _ in Formatter().parse(sentence):
                assert not name or not kind or kind.removesuffix("#") in kinds


def test_a_number_is_not_shown_as_what_it_is_not() -> None:
    with pytest.raises(ValueError, match="a stress is not shown as 'length'"):
        format(Figure(100.0, "mm", "stress"), "length")


def test_a_notice_of_the_core_speaks_in_both_systems() -> None:
    number = _core.Parameter(name="nose", value=25.4, quantity=_core.Quantity.length)
    found = _core.Notice(code=_core.NoticeCode.kick_off_pad, parameters=[number], names={})
    notice = from_core(found)
    assert notice.code == "kick-off-pad"
    assert "at station 25.40 mm, off the pad" in notice.message == str(notice)
    assert "at station 1.0000 in, off the pad" in notice.text("in")


def test_the_core_has_no_words_of_its_own() -> None:
    """What it says for a log is code, numbers and names; the error's text is Python's."""
    with pytest.raises(bs.NoConvergence) as refused:
        bs.grind_depth(bs.load(DESIGNS[1]), "900 N")
    error = refused.value
    assert str(error) == error.text("mm") != error.text("in")
    assert "900.0 N" in error.text("mm") and "lbf" in error.text("in")


def test_a_python_notice_needs_a_sentence() -> None:
    with pytest.raises(KeyError):
        Notice("no-such-code").text()
