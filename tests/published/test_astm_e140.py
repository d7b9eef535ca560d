"""ASTM E140, hardness conversion for steels: Rockwell C to Vickers and to tensile strength in ksi.

Both columns were read as a hardness tester's manual prints them (Vickers for 22 to 34 HRC in a
second copy). Strength is compared in MPa at 1 ksi = 6.894757 MPa, to half a MPa of rounding.
Vickers rows are whole numbers, held exactly.

Smooth form HV = (223 HRC + 14500)/(100 - HRC), read, named after Qvarnstrom: follows the table
within 1 % from 22 to 67 HRC and within 0.2 % from 43 to 64 HRC, where springs and blades are.
"""

import pytest

from agreement import Agree
from backspring import _core as core

MPA_PER_KSI = 6.894757293168361

VICKERS_ROWS = [
    (22, 248), (25, 266), (30, 302), (33, 327), (35, 345), (38, 372), (40, 392), (42, 412),
    (43, 423), (44, 434), (45, 446), (46, 458), (47, 471), (48, 484), (49, 498), (50, 513),
    (51, 528), (52, 544), (53, 560), (54, 577), (55, 595), (57, 633), (60, 697), (64, 800),
    (67, 900),
]  # fmt: skip
TENSILE_ROWS_KSI = [
    (35, 156), (36, 161), (37, 166), (38, 171), (39, 177), (40, 182), (41, 188), (42, 195),
    (43, 201), (44, 208), (45, 215), (46, 221), (47, 229), (48, 237), (49, 246), (50, 255),
    (51, 264), (52, 273), (53, 283), (54, 292), (55, 301), (56, 313), (57, 325), (58, 338),
    (59, 351),
]  # fmt: skip


def _smooth_vickers(hardness_hrc: float) -> float:
    return (223.0 * hardness_hrc + 14500.0) / (100.0 - hardness_hrc)


@pytest.mark.parametrize(("hardness_hrc", "hv"), VICKERS_ROWS)
def test_vickers_row(agree: Agree, hardness_hrc: float, hv: float) -> None:
    agree(f"Vickers at {hardness_hrc:g} HRC", core.vickers_hv(hardness_hrc), hv)


@pytest.mark.parametrize(("hardness_hrc", "ksi"), TENSILE_ROWS_KSI)
def test_tensile_row(agree: Agree, hardness_hrc: float, ksi: float) -> None:
    agree(
        f"tensile strength at {hardness_hrc:g} HRC [MPa]",
        core.tensile_astm_mpa(hardness_hrc),
        ksi * MPA_PER_KSI,
        abs=0.5,
    )


def test_between_rows_strength_is_read_on_a_straight_line(agree: Agree) -> None:
    agree(
        "tensile strength at 45.5 HRC, between two rows [MPa]",
        core.tensile_astm_mpa(45.5),
        218.0 * MPA_PER_KSI,
        abs=0.5,
    )


@pytest.mark.parametrize("hardness_hrc", [22.5, 28.0, 35.5, 41.0, 65.0, 67.0])
def test_vickers_follows_the_smooth_form(agree: Agree, hardness_hrc: float) -> None:
    smooth = _smooth_vickers(hardness_hrc)
    agree(
        f"Vickers at {hardness_hrc:g} HRC by the smooth form",
        core.vickers_hv(hardness_hrc),
        smooth,
        rel=0.01,
    )


@pytest.mark.parametrize(
    "hardness_hrc", [43.0, 44.5, 46.0, 48.5, 50.0, 52.0, 55.5, 58.0, 61.5, 64.0]
)
def test_vickers_follows_the_smooth_form_closely_at_spring_hardness(
    agree: Agree, hardness_hrc: float
) -> None:
    smooth = _smooth_vickers(hardness_hrc)
    agree(
        f"Vickers at {hardness_hrc:g} HRC by the smooth form, held closer",
        core.vickers_hv(hardness_hrc),
        smooth,
        rel=0.002,
    )


@pytest.mark.parametrize("hardness_hrc", [34.9, 59.1])
def test_no_strength_is_given_outside_the_table(hardness_hrc: float) -> None:
    with pytest.raises(core.OutOfRange, match="ASTM"):
        core.tensile_astm_mpa(hardness_hrc)
