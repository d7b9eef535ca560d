"""SAE J417, tensile strength by Rockwell C, as the JIS tables repeat it: a check on ASTM E140.

Read in a maker's catalogue (Miki Pulley) from 44 to 55 HRC. SAE rounds to 5 MPa and ASTM to 1 ksi,
so the two may part by one step of the coarser, 6.9 MPa; the rows of both stem from the same tests.
"""

import pytest

from agreement import Agree
from backspring import _core as core

ROWS_MPA = [
    (44, 1435), (45, 1480), (46, 1530), (47, 1580), (48, 1635), (49, 1695),
    (50, 1760), (51, 1820), (52, 1880), (53, 1950), (54, 2015), (55, 2075),
]  # fmt: skip


@pytest.mark.parametrize(("hardness_hrc", "sae_mpa"), ROWS_MPA)
def test_astm_column_agrees_with_sae(agree: Agree, hardness_hrc: float, sae_mpa: float) -> None:
    agree(
        f"tensile strength at {hardness_hrc:g} HRC [MPa]",
        core.tensile_astm_mpa(hardness_hrc),
        sae_mpa,
        abs=6.9,
    )


@pytest.mark.parametrize(("hardness_hrc", "sae_mpa"), ROWS_MPA)
def test_band_of_strength_reaches_the_sae_value(hardness_hrc: float, sae_mpa: float) -> None:
    band = core.tensile_mpa(hardness_hrc)
    assert band.low < sae_mpa < band.high + 6.9
