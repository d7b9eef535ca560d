"""The steels' data: every number has its source, and the numbers agree with each other."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import steel as steels

REPO = Path(__file__).resolve().parents[2]
DATA = {path.stem: tomllib.loads(path.read_text("utf-8")) for path in REPO.glob("data/steels/*")}
HEADERS, PACKAGE = REPO / "cpp" / "include" / "backspring", REPO / "python" / "backspring"
SOURCES = tomllib.loads((REPO / "data" / "sources.toml").read_text("utf-8"))
NAMES = (
    "1075", "1080", "1095", "17-7PH", "420", "440A", "440C", "5160", "52100", "A2", "O1", "W2",
)  # fmt: skip
CARBON_AND_LOW_ALLOY = ("1075", "1080", "1095", "5160", "52100", "A2", "O1", "W2")
CONFIDENCES = {"read", "memory", "derived"}


def tables(node: Any, path: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every table in a parsed file, with the way to it."""
    if isinstance(node, dict):
        yield path, node
        for key, child in node.items():
            yield from tables(child, f"{path}.{key}")
    elif isinstance(node, list):
        for index, child in enumerate(node):
            yield from tables(child, f"{path}[{index}]")


ALL_TABLES = [found for stem, data in DATA.items() for found in tables(data, stem)]
NUMBERED = [
    pytest.param(table, id=path)
    for path, table in ALL_TABLES
    if any(isinstance(value, int | float) for value in table.values())
]
TENSION_ROWS = [
    pytest.param(name, point, id=f"{name}: {point.condition}")
    for name in NAMES
    for point in steels.steel(name).points
    if point.loading == "tension" and point.yield_mpa is not None and point.tensile_mpa is not None
]


def words_of_source_lines() -> set[str]:
    """Words that stand in the @source lines of the core's headers and of the package."""
    lines = (
        line.partition("@source")[2]
        for file in (*HEADERS.rglob("*.hpp"), *PACKAGE.rglob("*.py"))
        for line in file.read_text("utf-8").splitlines()
    )
    return {word for line in lines for word in re.findall(r"[a-z0-9][a-z0-9-]*", line)}


def keys_of_the_verdict() -> set[str]:
    """Keys that verdicts hand out beside their margins, over the demos with one blade."""
    designs = [bs.load(path) for path in (REPO / "data" / "designs").glob("*.toml")]
    checks = [bs.check(design) for design in designs if len(design.blades) == 1]
    return {key for each in checks for margin in each.verdict for key in margin.sources}


def test_the_verdict_names_sources_that_exist() -> None:
    assert keys_of_the_verdict() <= set(SOURCES)
    assert "shigley-9" in keys_of_the_verdict()


@pytest.mark.parametrize("table", NUMBERED)
def test_every_number_names_its_sources_and_how_far_to_trust_it(table: dict[str, Any]) -> None:
    assert table["sources"]
    assert set(table["sources"]) <= set(SOURCES)
    assert table["confidence"] in CONFIDENCES


def test_every_source_is_cited() -> None:
    cited = {key for _, table in ALL_TABLES for key in table.get("sources", [])}
    assert set(SOURCES) - cited - words_of_source_lines() - keys_of_the_verdict() == set()


@pytest.mark.parametrize("key", SOURCES)
def test_a_source_names_a_document_and_no_web_address(key: str) -> None:
    source = SOURCES[key]
    assert source["title"]
    assert source["kind"]
    assert source["confidence"] in CONFIDENCES
    assert not re.search(r"://|www\.|\.(com|org|net|io|in|de|it|pl)\b", str(source))


@pytest.mark.parametrize("name", NAMES)
def test_values_lie_inside_their_bands(name: str) -> None:
    found = steels.steel(name)
    elastic = (found.youngs_modulus_mpa, found.poisson, found.density_kg_m3)
    for figure in (*elastic, found.yield_ratio):
        assert figure.low <= figure.value <= figure.high
        assert figure.low < figure.high
    assert found.yield_ratio.high < 1.0
    assert found.hardness_low_hrc < found.hardness_high_hrc


@pytest.mark.parametrize(("name", "point"), TENSION_ROWS)
def test_a_row_agrees_with_its_steels_ratio_or_says_why_not(name: str, point: steels.Point) -> None:
    band = steels.steel(name).yield_ratio
    assert point.yield_mpa is not None
    assert point.tensile_mpa is not None
    ratio = point.yield_mpa / point.tensile_mpa
    # Bands are stated to two or three figures; a row is held to half a unit of the second.
    inside = band.low - 0.005 <= ratio <= band.high + 0.005
    assert inside != point.note.startswith("Outside the band: "), f"ratio {ratio:.3f}"


@pytest.mark.parametrize(
    ("hardness_hrc", "tensile_mpa"),
    [(56, 2158.0), (57, 2241.0), (59, 2420.0)],  # ASTM E140, read in a tester's manual
)
def test_cautious_yield_of_440c_stays_under_every_measured_row(
    hardness_hrc: float, tensile_mpa: float
) -> None:
    found = steels.steel("440C")
    measured_mpa = [p.yield_mpa for p in found.points if p.hardness_hrc == hardness_hrc]
    assert measured_mpa
    for yield_mpa in measured_mpa:
        assert yield_mpa is not None
        assert found.yield_ratio.low * tensile_mpa < yield_mpa


@pytest.mark.parametrize("name", CARBON_AND_LOW_ALLOY)
def test_carbon_and_low_alloy_bands_hold_the_textbook_values(name: str) -> None:
    found = steels.steel(name)
    # Carbon steel, E 207 GPa and Poisson 0.292: Shigley, Table A-5 (from memory).
    assert found.youngs_modulus_mpa.low <= 207_000 <= found.youngs_modulus_mpa.high
    assert found.poisson.low <= 0.292 <= found.poisson.high
    # Bending yield of hardened and tempered wire, 0.87 of tensile: Shigley, torsion springs.
    assert found.yield_ratio.low <= 0.87 <= found.yield_ratio.high
    # Elastic limit of oil-tempered wire, 85 to 90 % of tensile: Shigley, Table 10-5 (read).
    assert found.yield_ratio.low <= 0.85
    assert found.yield_ratio.high >= 0.90


def test_strip_row_is_the_sheets() -> None:
    # Sandvik 15LM strip (ASTM 1074), 2.5 to 3.5 mm: 1350 and 1500 MPa.
    row = steels.steel("1075").points[-1]
    assert (row.yield_mpa, row.tensile_mpa, row.hardness_hrc) == (1350.0, 1500.0, None)


def test_the_modulus_conflict_of_o1_is_shown() -> None:
    found = steels.steel("O1")
    modulus = found.youngs_modulus_mpa
    assert (modulus.value, modulus.low, modulus.high) == (205_000, 190_000, 210_000)
    assert any("190 GPa would give 7 % less pull" in line for line in found.conflicts)
    assert 1.0 - modulus.low / modulus.value == pytest.approx(0.07, abs=0.005)


def test_names_are_those_of_the_files() -> None:
    assert steels.names() == NAMES
    assert sorted(DATA) == sorted(name.lower() for name in NAMES)


def test_the_package_holds_the_same_data_as_the_repository() -> None:
    assert set(steels.sources()) == set(SOURCES)
    for data in DATA.values():
        found = steels.steel(data["name"])
        assert found.youngs_modulus_mpa.value == data["elastic"]["youngs_modulus_mpa"]["value"]
        assert found.cautions == tuple(data["strength"]["cautions"])
        assert len(found.points) == len(data["points"])


@pytest.mark.parametrize(
    ("asked", "name"),
    [("O1", "O1"), ("o1", "O1"), ("1.2510", "O1"), ("440c", "440C"), ("17-7 ph", "17-7PH")],
)
def test_lookup_takes_any_case_and_other_names(asked: str, name: str) -> None:
    assert steels.steel(asked).name == name


def test_no_name_means_two_steels() -> None:
    called = [each for data in DATA.values() for each in (data["name"], *data["also_called"])]
    assert len({each.casefold() for each in called}) == len(called)


KNOWN = "known: 1075, 1080, 1095, 17-7PH, 420, 440A, 440C, 5160, 52100, A2, O1, W2"


@pytest.mark.parametrize(
    ("asked", "message"),
    [
        ("01", f'unknown steel "01": did you mean "O1"? {KNOWN}'),
        ("440D", f'unknown steel "440D": did you mean "440C"? {KNOWN}'),
        ("1.2511", f'unknown steel "1.2511": did you mean "1.2510"? {KNOWN}'),
        ("bronze", f'unknown steel "bronze": {KNOWN}'),
        ("", f'unknown steel "": {KNOWN}'),
    ],
)
def test_an_unknown_steel_is_refused_with_a_near_match(asked: str, message: str) -> None:
    with pytest.raises(LookupError) as caught:
        steels.steel(asked)
    assert str(caught.value) == message


def test_importing_the_module_reads_no_toml() -> None:
    program = """
import sys
before = set(sys.modules)
from backspring import steel as steels
assert not {"tomllib", "numpy"} & (set(sys.modules) - before)
"""
    subprocess.run([sys.executable, "-c", program], check=True)
