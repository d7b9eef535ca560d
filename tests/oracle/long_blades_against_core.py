"""An independent solution by dense elements: drawn joints of two and of three blades.

Of each kind and figure the joint that uses most of what is allowed, all blades held anywhere and
at rest, closed and with the first one open; see blades_against_core.py.
"""

from __future__ import annotations

import pytest

from agreement import Agree
from oracle.blades_against_core import LIMITS, Difference, differences
from oracle.drawn_joints import drawn_joints

# Three blades take the dense elements long.
JOINTS = {"ends": 20, "side": 20, "three": 2}
UNITS = {"force": "share", "energy": "share", "angle_deg": "deg"}


@pytest.mark.parametrize("kind", JOINTS)
def test_drawn_joints(agree: Agree, kind: str) -> None:
    worst: dict[str, Difference] = {}
    for _, drawn in drawn_joints(kind, JOINTS[kind]):
        for each in differences(drawn, held=2, every_case=False):
            if each.figure not in worst or not abs(each.value) <= abs(worst[each.figure].value):
                worst[each.figure] = each
    for figure, each in worst.items():
        name, unit = figure.split("_")[0], UNITS.get(figure, "mm")
        case = f"{kind}, worst of {JOINTS[kind]} joints, error of {name} [{unit}]"
        agree(case, each.value, 0.0, abs=LIMITS[figure])
