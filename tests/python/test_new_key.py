"""How many files a new key of the design file costs: one is added in a copy of the sources.

The C++ of the copy is compiled, not linked: the core's table is then given the same row from
Python, so that all that reads the table is seen to know the key.
"""

from __future__ import annotations

import filecmp
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MOST_FILES = 4
EDITS = {
    # The number's place in the core, its row, its name in Python, and what is refused of it.
    "cpp/include/backspring/design/design.hpp": (
        "    std::optional<double> liner_mm; ",
        "    std::optional<double> bolster_mm;  ///< thickness of one bolster [mm]\n",
    ),
    "cpp/src/design/fit_fields.cpp": (
        '        {.key = "pins.yield",',
        '        {.key = "pins.bolster",\n         .least = kShortestMm,\n'
        '         .greatest = 20.0,\n         .left_out = "no bolster",\n'
        '         .meaning = "Thickness of one bolster.",\n         .example = "1.5",\n'
        "         BACKSPRING_PLACE(pins.bolster_mm)},\n",
    ),
    "python/bindings/verdict.cpp": (
        "                  BACKSPRING_FIELD(Pins, liner_mm),",
        "                  BACKSPRING_FIELD(Pins, bolster_mm),\n",
    ),
    "tests/python/bad_designs.toml": (
        "[[bad]]\nreason = 'steel missing'",
        "[[bad]]\nreason = 'bolster too thick'\nold = '[targets]'\n"
        "new = '''\n[pins]\nbolster = 25\n\n[targets]'''\n"
        "message = ':29: pins.bolster: must be at most 20 mm, got 25 mm'\n\n",
    ),
}
KNOWN = """
import sys, tomllib
from backspring import _core
row = _core.Field(key="pins.bolster", least=0.1, greatest=20.0, left_out="no bolster",
                  meaning="Thickness of one bolster.", example="1.5")
rows = [*_core.fields(), row]
_core.fields = lambda: rows
import backspring as bs
from backspring.cli import main
from backspring.design.schema import design_schema
from backspring.report.keys import keys_reference
text = tomllib.loads(open(sys.argv[1]).read())
new = next(each for each in text["bad"] if each["reason"] == "bolster too thick")
good = tomllib.loads(text["good"] + "[pins]\\nbolster = '1/16 in'\\n")
design = bs.Design(**good)
print(design.to_dict()["pins"], design.replace(**{"pins.bolster": 2}).to_dict()["pins"])
print(design_schema()["properties"]["pins"]["properties"]["bolster"]["anyOf"][0]["maximum"])
print("`bolster`" in keys_reference(), main(["keys", "pins.bolster"]))
bad = sys.argv[1] + ".bad"
open(bad, "w").write(text["good"].replace(new["old"], new["new"], 1))
try:
    bs.load(bad)
except bs.InvalidInput as error:
    print(str(error) == bad + new["message"])
"""


def copy_with_a_key(copy: Path) -> list[str]:
    """Copy the sources, add the key, and return the files that differ."""
    for folder in ("cpp", "python", "tests/python"):
        shutil.copytree(ROOT / folder, copy / folder, ignore=shutil.ignore_patterns("*.so", "data"))
    for name, (before, added) in EDITS.items():
        path = copy / name
        text = path.read_text("utf-8")
        assert text.count(before) == 1, name
        path.write_text(text.replace(before, added + before), "utf-8")
    return [
        str(path.relative_to(copy))
        for path in sorted(copy.rglob("*"))
        if path.is_file() and not filecmp.cmp(path, ROOT / path.relative_to(copy), shallow=False)
    ]


def test_a_new_key_costs_four_files(tmp_path: Path) -> None:
    changed = copy_with_a_key(tmp_path)
    assert changed == sorted(EDITS)
    assert len(changed) <= MOST_FILES
    compiler = ["c++", "-std=c++20", "-fsyntax-only", "-Wall", "-Wextra", "-Werror"]
    source = tmp_path / "cpp/src/design/fit_fields.cpp"
    subprocess.run([*compiler, f"-I{tmp_path / 'cpp/include'}", source], check=True)
    done = subprocess.run(
        [sys.executable, "-c", KNOWN, tmp_path / "tests/python/bad_designs.toml"],
        capture_output=True,
        text=True,
        check=True,
    )
    lines = done.stdout.splitlines()
    assert lines[:2] == ["{'bolster': 1.5875} {'bolster': 2.0}", "20.0"]
    assert lines[-2:] == ["True 0", "True"]
    assert "thickness of one bolster" in done.stdout.lower()
