"""What README says of the models' differences is what the kept evidence has."""

import json
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
ROWS = json.loads((ROOT / "data" / "evidence.json").read_text(encoding="utf-8"))["data"]["rows"]
BY_SHARE = [
    (r"against a plane-stress model with holes \| ([\d.]+) %", "test_plane_stress", "two pins in"),
    (r"within ([\d.]+) % of plane-stress models of three", "test_curved_springs", "stiffness"),
    (r"closed forms hold plane-stress models within ([\d.]+) %", "test_plane_stress_notch", ""),
    (r"within ([\d.]+) % of plane-stress plates", "long_liner_plates", "give"),
    (r"in readings, ([\d.]+) % in force, against a sol", "rows_drawn_joints", ": force"),
]
# A figure that is far more than all that is kept is no figure of it.
FAR = 4.0


def rows(file: str, word: str) -> list[dict[str, float]]:
    found = [row for row in ROWS if row["file"] == f"oracle/{file}.py" and word in row["case"]]
    assert found
    return found


@pytest.mark.parametrize(("sentence", "file", "word"), BY_SHARE, ids=[row[1] for row in BY_SHARE])
def test_a_share_is_the_greatest_that_is_kept(sentence: str, file: str, word: str) -> None:
    (stated,) = re.findall(sentence, README)
    greatest = max(row["difference"] / abs(row["theirs"]) for row in rows(file, word))
    assert greatest <= float(stated) / 100.0 <= FAR * greatest


def test_a_reading_is_the_farthest_that_is_kept() -> None:
    (stated,) = re.findall(r"under ([\d.]+) mm in readings", README)
    farthest = max(row["difference"] for row in rows("rows_drawn_joints", "reading"))
    assert farthest <= float(stated) <= FAR * farthest
