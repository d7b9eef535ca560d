"""DIN 50150, conversion of hardness: Rockwell C to tensile strength in MPa.

Rows read in two copies of the table, held exactly. One copy prints 1115 for 1155 MPa at 36.6 HRC:
a slip, for the rows around it are 1125 and 1190.

Smooth form Rm = 3.2064 HV, valid to 430 HV, read elsewhere: follows the table within 0.6 %, its
rows being rounded to 5 MPa. HV is the table's own column, and is held against the American table's
Vickers column too: rounding of HRC to tenths here and of HV to wholes there allows 0.3 %.
"""

import pytest

from agreement import Agree
from backspring import _core as core

ROWS = [
    (20.3, 770, 240), (24.0, 835, 260), (28.5, 930, 290), (32.2, 1030, 320), (35.5, 1125, 350),
    (36.6, 1155, 360), (37.7, 1190, 370), (38.8, 1220, 380), (39.8, 1255, 390), (40.8, 1290, 400),
    (41.8, 1320, 410), (42.7, 1350, 420), (43.6, 1385, 430), (44.5, 1420, 440), (45.3, 1455, 450),
    (46.1, 1485, 460), (46.9, 1520, 470), (47.7, 1555, 480), (48.4, 1595, 490), (49.1, 1630, 500),
    (49.8, 1665, 510), (50.5, 1700, 520), (51.7, 1775, 540), (53.0, 1845, 560), (54.1, 1920, 580),
    (55.2, 1995, 600), (56.3, 2070, 620), (57.8, 2180, 650),
]  # fmt: skip


@pytest.mark.parametrize(("hardness_hrc", "tensile_mpa", "hv"), ROWS)
def test_tensile_row(agree: Agree, hardness_hrc: float, tensile_mpa: float, hv: float) -> None:
    agree(
        f"tensile strength at {hardness_hrc:g} HRC [MPa]",
        core.tensile_din_mpa(hardness_hrc),
        tensile_mpa,
    )


@pytest.mark.parametrize(("hardness_hrc", "tensile_mpa", "hv"), [r for r in ROWS if r[2] <= 430])
def test_tensile_follows_the_smooth_form(
    agree: Agree, hardness_hrc: float, tensile_mpa: float, hv: float
) -> None:
    agree(
        f"tensile strength at {hardness_hrc:g} HRC by the smooth form [MPa]",
        core.tensile_din_mpa(hardness_hrc),
        3.2064 * hv,
        rel=0.006,
    )


@pytest.mark.parametrize(("hardness_hrc", "tensile_mpa", "hv"), [r for r in ROWS if r[0] >= 35])
def test_vickers_column_agrees_with_the_american_table(
    agree: Agree, hardness_hrc: float, tensile_mpa: float, hv: float
) -> None:
    agree(
        f"Vickers at {hardness_hrc:g} HRC beside the American table",
        core.vickers_hv(hardness_hrc),
        hv,
        rel=0.003,
    )


@pytest.mark.parametrize("hardness_hrc", [48.0, 49.0, 50.0, 51.0, 52.0, 53.0, 54.0, 55.0])
def test_band_spans_both_tables_which_part_by_four_to_five_percent(hardness_hrc: float) -> None:
    band = core.tensile_mpa(hardness_hrc)
    assert band.low == core.tensile_din_mpa(hardness_hrc)
    assert band.high == core.tensile_astm_mpa(hardness_hrc)
    assert band.value == pytest.approx((band.low + band.high) / 2.0, rel=1e-12)
    assert 0.037 < 1.0 - band.low / band.high < 0.056


@pytest.mark.parametrize("hardness_hrc", [20.2, 57.9])
def test_no_strength_is_given_outside_the_table(hardness_hrc: float) -> None:
    with pytest.raises(core.OutOfRange, match="DIN"):
        core.tensile_din_mpa(hardness_hrc)
