"""CalculiX, solids in contact, run here: two joints open on their stop, spring and tang both solid.

What may differ and why stands in contact_with_stop.py.
"""

from __future__ import annotations

import pytest

from agreement import Agree
from oracle.contact_with_stop import Open, compared, joints

NEEDS_CALCULIX = True
JOINTS = dict(joints())


@pytest.mark.parametrize("name", JOINTS)
def test_open_on_its_stop(agree: Agree, name: str) -> None:
    bare: tuple[Open, Open] | None = None
    for place, core, solid in compared(JOINTS[name]):
        case = f"{name}, stop at the {place}" if bare else f"{name}, no stop"
        agree(f"{case}, force [N]", core.force_n, solid.force_n, rel=0.001)
        agree(f"{case}, loaded reading [mm]", core.reading_mm, solid.reading_mm, abs=0.001)
        if bare is None:
            bare = core, solid
            continue
        moved = [
            of.reading_mm - base.reading_mm for of, base in zip((core, solid), bare, strict=True)
        ]
        agree(f"{case}, change of the reading [mm]", *moved, abs=0.0003)
        agree(f"{case}, force on the stop [N]", core.stop_n, solid.stop_n, rel=0.005)
        agree(f"{case}, angle [deg]", core.angle_deg, solid.angle_deg, abs=0.03)
