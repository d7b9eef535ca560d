"""A page holds a whole design, needs nothing besides itself, and is written whole or not at all."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

import backspring as bs
import page_reader
from backspring.report.page_drawing import drawing
from backspring.report.page_parts import Drawing, Section, Words, require_filled
from backspring.report.page_words import CAUTIONS
from backspring.report.tables import Lines, TextTable
from backspring.report.verdict import MEANINGS

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
WHOLE = ("purpose", "data", "assumptions")
OF_BLADE = ("results", "strength", "levers", "allowance", "left-out", "changes")
LAST = ("sources", "cautions", "version")
METRIC = r"[\d\[ ](?:mm|MPa|mJ|m/s|N|N mm|um|kg|g)\b(?!-)"


@cache
def heron() -> bs.Page:
    return bs.page(bs.load(DESIGNS / "heron.toml"))


@cache
def turnstone() -> bs.Page:
    return bs.page(bs.load(DESIGNS / "turnstone.toml"), units="in")


def test_a_page_has_every_section_in_turn() -> None:
    assert heron().sections == (*WHOLE, *OF_BLADE, *LAST)
    headings = page_reader.PageReader(heron().html).headings
    assert [each.partition(". ")[0] for each in headings] == [
        str(number) for number in range(1, len(heron().sections) + 1)
    ]


@pytest.mark.usefixtures("undrawn")
def test_each_of_several_blades_has_its_part() -> None:
    parts = [f"{key}.{blade}" for blade in ("long", "pen") for key in OF_BLADE]
    design = bs.load(DESIGNS / "turnstone.toml")
    assert bs.page(design).sections == (*WHOLE, *parts, *LAST)


@pytest.mark.parametrize("page", [heron, turnstone])
def test_a_page_is_well_formed_and_its_drawings_are_xml(page: Callable[[], bs.Page]) -> None:
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
def test_a_page_runs_nothing_and_fetches_nothing(page: Callable[[], bs.Page]) -> None:
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
def test_every_name_in_a_page_is_its_own_and_every_reference_finds_it(
    page: Callable[[], bs.Page],
) -> None:
    read = page_reader.PageReader(page().html)
    names = read.values("id")
    assert len(names) == len({*names})
    wanted = [each[1:] for each in read.values("href") if each.startswith("#")]
    wanted += re.findall(r"url\(#([^)]*)\)", page().html)
    assert {*wanted} <= {*names}


@pytest.mark.usefixtures("undrawn")
def test_every_key_of_the_file_stands_in_the_data_with_its_value() -> None:
    text = page_reader.PageReader(bs.page(bs.load(DESIGNS / "kestrel.toml")).html).text
    for key in ("steel", "hardness", "thickness", "pad", "corner_radius", "nail_nick", "pivot_pin"):
        assert f"\n{key}\n" in text
    for value in ("1075", "46 HRC", "0.125 in", "0.06 in", "4 to 6 lbf", "1 oz", "0.002 in"):
        assert f"\n{value}\n" in text


def test_keys_of_a_further_blade_stand_under_its_name() -> None:
    text = page_reader.PageReader(turnstone().html).text
    assert "\n[blades.pen]\n" in text
    assert "\ntang.closed\n" in text


def test_in_inches_nothing_is_in_metric_units() -> None:
    """Titles of sources, which are quoted, stand in the table of sources alone."""
    before, _, after = turnstone().html.partition(". Sources</h2>")
    words = page_reader.PageReader(before + after.partition("</section>")[2]).text
    assert re.findall(rf".*{METRIC}.*", words) == []
    assert len(re.findall(r"\d (?:in|thou|lbf|ksi)\b", words)) > 50


@pytest.mark.usefixtures("undrawn")
@pytest.mark.parametrize(
    "path",
    [DESIGNS / f"{name}.toml" for name in ("bittern", "osprey", "wren")],
    ids=lambda path: path.stem,
)
def test_no_sentence_of_a_demo_in_mm_is_in_metric_units_in_inches(path: Path) -> None:
    html = bs.page(bs.load(path), units="in").html
    words = page_reader.PageReader(html.partition(". Sources</h2>")[0]).text
    assert re.findall(rf".*{METRIC}.*", words) == []


def test_in_millimetres_nothing_is_in_inches() -> None:
    words = page_reader.PageReader(heron().html.partition(". Sources</h2>")[0]).text
    assert (
        re.findall(r".*\d (?:in|thou|lbf|ksi|ft/s)\b(?! (?:readings|force|stiffness)).*", words)
        == []
    )


def test_the_same_design_gives_the_same_bytes() -> None:
    check = bs.check(bs.load(DESIGNS / "heron.toml"))
    assert isinstance(check, bs.Check)
    again = drawing(check, "back", "The loaded back.", "mm", "b1-back").svg
    assert again.partition(">")[2] in heron().html


def test_no_block_of_the_check_is_left_out() -> None:
    """What a check says is all on the page, whatever a later check says more."""
    check = bs.check(bs.load(DESIGNS / "heron.toml"))
    text = page_reader.PageReader(heron().html).text
    elsewhere = ("Steel", "Assumed", "Caution", "In words", "Left out")
    missing = [
        line
        for block in check.laid_out().blocks
        if not (isinstance(block, Lines) and block.heading in elsewhere)
        for line in (block.lines if isinstance(block, Lines) else map(str, sum(block.rows, ())))
        if line not in text
    ]
    assert missing == []


def test_a_margin_has_a_word_and_failures_come_first() -> None:
    table = heron().html.partition("<caption>Verdict</caption>")[2].partition("</table>")[0]
    words = re.findall(r"<td[^>]*>(fails|close|holds|note)</td>", table)
    assert words == sorted(words, key=[*MEANINGS].index)
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
