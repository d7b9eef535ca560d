"""A page holds a whole design, needs nothing besides itself, and is written whole or not at all."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import page_reader
import pytest

import backspring as bs
from backspring.report.check import check_report
from backspring.report.page_parts import Drawing, Section, Words, require_filled
from backspring.report.page_results import own_blocks
from backspring.report.page_words import CAUTIONS, WORDS
from backspring.report.tables import Lines, TextTable
from backspring.units import System

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
WHOLE = ("purpose", "data", "assumptions")
OF_BLADE = ("results", "strength", "levers", "allowance", "changes")
LAST = ("sources", "cautions", "version")
HOSTILE = (
    '<script>alert("x")</script>',
    'Tom & Jerry\'s "best" <b>&amp;',
    "' onload='x' \"><img src=x>",
    "סכין $x_1$ סכין",
    "]]>--><svg>\\",
    "W" * 100,
)


def made(name: str, units: System = "mm") -> bs.Page:
    return bs.page(bs.load(DESIGNS / f"{name}.toml"), units=units)


@cache
def heron() -> bs.Page:
    return made("heron")


@cache
def turnstone() -> bs.Page:
    return made("turnstone", "in")


def test_a_page_has_every_section_in_turn() -> None:
    assert heron().sections == (*WHOLE, *OF_BLADE, *LAST)
    headings = page_reader.PageReader(heron().html).headings
    assert [each.partition(". ")[0] for each in headings] == [
        str(number) for number in range(1, len(heron().sections) + 1)
    ]


def test_each_of_several_blades_has_its_part() -> None:
    parts = [f"{key}.{blade}" for blade in ("long", "pen") for key in OF_BLADE]
    assert turnstone().sections == (*WHOLE, *parts, *LAST)
    only = bs.page(bs.load(DESIGNS / "turnstone.toml").seen_from("pen"))
    assert only.sections == (*WHOLE, *OF_BLADE, *LAST)


@pytest.mark.parametrize("page", [heron, turnstone])
def test_a_page_is_well_formed_and_its_drawings_are_xml(page: type[bs.Page]) -> None:
    html = page().html
    assert page_reader.PageReader(html).wrong == []
    found = page_reader.drawings(html)
    assert len(found) == html.count("<figure>") >= 4
    assert all("viewBox" in each.attrib and each.attrib["aria-label"] for each in found)


def test_words_in_a_drawing_are_text_that_can_be_found() -> None:
    joint = page_reader.drawings(heron().html)[0]
    words = {each.text for each in joint.iter("text")}
    assert {"half-stop", "middle pin", "rear pin"} <= words


@pytest.mark.parametrize("page", [heron, turnstone])
def test_a_page_runs_nothing_and_fetches_nothing(page: type[bs.Page]) -> None:
    read = page_reader.PageReader(page().html)
    assert read.tags.isdisjoint(("script", "link", "iframe", "object", "embed", "form", "base"))
    assert not [name for _, name, _ in read.attributes if name.startswith("on")]
    links = [*read.values("href"), *read.values("src")]
    assert all(each.startswith(("#", "data:image/png;base64,")) for each in links)
    places = re.findall(r"url\(([^)]*)\)", page().html)
    assert all(each.startswith("#") for each in places)
    assert "default-src 'none'" in page().html
    assert "@import" not in page().html
    assert "@font-face" not in page().html


@pytest.mark.parametrize("page", [heron, turnstone])
def test_every_name_in_a_page_is_its_own_and_every_reference_finds_it(page: type[bs.Page]) -> None:
    read = page_reader.PageReader(page().html)
    names = read.values("id")
    assert len(names) == len({*names})
    wanted = [each[1:] for each in read.values("href") if each.startswith("#")]
    wanted += re.findall(r"url\(#([^)]*)\)", page().html)
    assert {*wanted} <= {*names}


def test_every_key_of_the_file_stands_in_the_data_with_its_value() -> None:
    text = page_reader.PageReader(made_lines("kestrel")).text
    for key in ("steel", "hardness", "thickness", "pad", "corner_radius", "nail_nick", "pivot_pin"):
        assert f"\n{key}\n" in text
    for value in ("1075", "46 HRC", "0.09375 in", "0.027 in", "2 to 4 lbf", "1 oz", "0.002 in"):
        assert f"\n{value}\n" in text


@cache
def made_lines(name: str) -> str:
    return made(name, "in").html


def test_keys_of_a_further_blade_stand_under_its_name() -> None:
    text = page_reader.PageReader(turnstone().html).text
    assert "\n[blades.pen]\n" in text
    assert "\ntang.closed\n" in text


@pytest.mark.parametrize("name", ["turnstone", "kestrel"])
def test_in_inches_nothing_is_in_metric_units(name: str) -> None:
    """Titles of sources, which are quoted, stand in the table of sources alone."""
    html = turnstone().html if name == "turnstone" else made_lines(name)
    before, _, after = html.partition(". Sources</h2>")
    words = page_reader.PageReader(before + after.partition("</section>")[2]).text
    assert re.findall(r".*[\d\[ ](?:mm|MPa|mJ|m/s|N|N mm|um|kg|g)\b(?!-).*", words) == []
    assert len(re.findall(r"\d (?:in|thou|lbf|ksi)\b", words)) > 50


def test_in_millimetres_nothing_is_in_inches() -> None:
    words = page_reader.PageReader(heron().html.partition(". Sources</h2>")[0]).text
    assert (
        re.findall(r".*\d (?:in|thou|lbf|ksi|ft/s)\b(?! (?:readings|force|stiffness)).*", words)
        == []
    )


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_is_text_and_nothing_else(name: str) -> None:
    plain = page_reader.PageReader(heron().html)
    read = page_reader.PageReader(bs.page(bs.load(DESIGNS / "heron.toml").replace(name=name)).html)
    assert read.wrong == []
    assert read.tags - {"span"} == plain.tags
    assert {each for _, each, _ in read.attributes} - {"dir"} == {
        each for _, each, _ in plain.attributes
    }
    assert read.words.count(name) >= 2  # The window's title, and the page's.


def test_a_hostile_name_of_a_blade_is_text_and_nothing_else() -> None:
    content = bs.load(DESIGNS / "turnstone.toml").to_dict()
    first, second = "<script>&", "\"'<i>"
    content["blade"]["name"], content["blades"][0]["name"] = first, second
    page = bs.page(bs.Design(**content))
    read = page_reader.PageReader(page.html)
    assert read.wrong == []
    assert read.tags.isdisjoint(("script", "i"))
    assert {f"results.{first}", f"results.{second}"} <= {*page.sections}
    assert len(page_reader.drawings(page.html)) == 8


def test_the_same_design_gives_the_same_bytes() -> None:
    assert made("heron").html == heron().html


def test_no_block_of_the_check_is_left_out() -> None:
    """What a check says is all on the page, whatever a later check says more."""
    check = bs.check(bs.load(DESIGNS / "heron.toml"))
    assert isinstance(check, bs.Check)
    text = page_reader.PageReader(heron().html).text
    for block in check_report(check, everything=True).blocks:
        lines = block.lines if isinstance(block, Lines) else block.title.splitlines()
        for line in lines:
            if line.startswith(("Wear", "A computed")) or ": " in line:
                line = line.rpartition(": ")[2]
            assert line in text, line
    assert len([*own_blocks(check, "mm")]) >= 5


def test_a_margin_has_a_word_and_failures_come_first() -> None:
    table = heron().html.partition("<caption>Verdict</caption>")[2].partition("</table>")[0]
    words = re.findall(r"<td[^>]*>(fails|close|holds|note)</td>", table)
    assert words == sorted(words, key=[*WORDS].index)
    assert words[0] == "fails"
    assert words[-1] == "note"


def test_the_page_says_which_targets_are_missed_as_the_check_does() -> None:
    check = bs.check(bs.load(DESIGNS / "heron.toml"))
    missed = [each.name.replace("_", " ") for each in check.targets if not each.met]
    assert heron().status == check.status == "fail"
    assert f"misses what is wanted of it: {', '.join(missed)}" in heron().html
    assert turnstone().status == "pass"
    assert "meets all that is wanted of it" in turnstone().html


def test_cautions_version_and_hash_are_on_every_page() -> None:
    text = page_reader.PageReader(heron().html).text
    assert all(each in text for each in CAUTIONS)
    assert f"backspring {bs.__version__}" in text
    assert bs.load(DESIGNS / "heron.toml").sha256 in text


def test_every_source_named_beside_a_margin_is_told_whole() -> None:
    check = bs.check(bs.load(DESIGNS / "heron.toml"))
    assert isinstance(check, bs.Check)
    sources = heron().html.partition(". Sources</h2>")[2]
    cited = {key for margin in check.verdict for key in margin.sources}
    cited |= {source["key"] for source in check.steel["sources"]}
    assert cited
    assert all(f"<td>{key}</td>" in sources for key in cited)


@pytest.mark.parametrize(
    ("part", "said"),
    [
        (None, "section levers: has nothing in it"),
        (Lines("Reading it", ()), 'section levers: "Reading it" is empty'),
        (Lines("Reading it", ("", " ")), 'section levers: "Reading it" is empty'),
        (TextTable("Levers", ("", "pull"), ()), 'section levers: "Levers" is empty'),
        (Words("Keys", ("key",), (("",),)), 'section levers: "Keys" is empty'),
        (Drawing("The joint", ""), 'section levers: "The joint" is empty'),
    ],
)
def test_an_empty_section_is_refused_by_name(part: Lines | None, said: str) -> None:
    full = Section("data", "Data", (Lines("", ("steel",)),))
    empty = Section("levers", "Levers", () if part is None else (part,), None)
    with pytest.raises(bs.InvalidInput, match=re.escape(said)) as refused:
        require_filled([full, empty, empty])
    assert [fault.code for fault in refused.value.faults] == ["empty-section"] * 2
    require_filled([full])
