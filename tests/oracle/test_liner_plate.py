"""CalculiX, plane-stress finite elements, run here: three pairs of liners as plates with holes.

See liner_plate.py. The beam with shear alone is
6 to 10 % too stiff for these three: a hole near the edge gives, and takes section away where the
moment is greatest. long_liner_plates.py has many more.
"""

import pytest

from agreement import Agree
from backspring import _core

from .liner_plate import Liner, Pin, mesh_liner, seat_mm_per_n

NEEDS_CALCULIX = True
SPAN_MM, PIVOT_MM, PIN_MM, PIVOT_PIN_MM = 34.0, 32.0, 2.0, 3.0
LINERS = {
    "brass, 1 mm, 12 mm high": (_core.LinerMetal.brass, 1.0, 12.0),
    "nickel silver, 0.8 mm, 10 mm high": (_core.LinerMetal.nickel_silver, 0.8, 10.0),
    "carbon steel, 1.2 mm, 14 mm high": (_core.LinerMetal.steel, 1.2, 14.0),
}
# Young's modulus and Poisson's ratio, said here once more.
METALS = {
    _core.LinerMetal.brass: (110000.0, 0.31),
    _core.LinerMetal.nickel_silver: (120000.0, 0.32),
    _core.LinerMetal.steel: (205000.0, 0.29),
}


def plate(
    metal: _core.LinerMetal, thickness_mm: float, height_mm: float, depth_mm: float = 2.0
) -> Liner:
    """Both liners as one plate; the pivot lies a little below mid-height."""
    modulus, poisson = METALS[metal]
    deep = 0.5 * height_mm + 1.0
    return Liner(
        height_mm=height_mm,
        thickness_mm=2.0 * thickness_mm,
        youngs_modulus_mpa=modulus,
        poisson=poisson,
        rear=Pin(-SPAN_MM, depth_mm, PIN_MM, presses_outward=False),
        middle=Pin(0.0, depth_mm, PIN_MM, presses_outward=True),
        pivot=Pin(PIVOT_MM, deep, PIVOT_PIN_MM, presses_outward=False),
    )


def beam_seat_mm_per_n(metal: _core.LinerMetal, liner: Liner) -> float:
    def seat(pin: Pin) -> _core.PinSeat:
        return _core.PinSeat(x_mm=pin.x_mm, diameter_mm=pin.diameter_mm, depth_mm=pin.depth_mm)

    frame = _core.Frame(
        liner_metal=metal,
        liner_thickness_mm=0.5 * liner.thickness_mm,
        liner_height_mm=liner.height_mm,
    )
    pins = _core.FramePins(
        middle=seat(liner.middle), rear=seat(liner.rear), pivot=seat(liner.pivot)
    )
    give = _core.make_frame_give(frame, pins)
    return _core.seat_mm_per_n(give, -liner.rear.x_mm, liner.pivot.x_mm)


@pytest.mark.parametrize("name", LINERS)
def test_three_liners_give_as_plates_do(agree: Agree, name: str) -> None:
    metal, thickness, height = LINERS[name]
    liner = plate(metal, thickness, height)
    give = beam_seat_mm_per_n(metal, liner)
    agree(f"{name}, give of the seats [mm/N]", give, seat_mm_per_n(liner), rel=0.05)


def test_the_mesh_leaves_three_round_holes_in_a_rectangle() -> None:
    liner = plate(*LINERS["brass, 1 mm, 12 mm high"])
    mesh = mesh_liner(liner, 1)
    corners = mesh.xy_mm[mesh.elements[:, :4]]
    x, y = corners[..., 0], corners[..., 1]
    area = (
        0.5
        * abs(
            (x[:, 2] - x[:, 0]) * (y[:, 3] - y[:, 1]) - (x[:, 3] - x[:, 1]) * (y[:, 2] - y[:, 0])
        ).sum()
    )
    length = SPAN_MM + PIVOT_MM + 2.0 * liner.beyond_mm
    holes = 0.25 * 3.14159265 * (2 * PIN_MM**2 + PIVOT_PIN_MM**2)
    # Straight sides cut a little off the round ones.
    assert area == pytest.approx(length * 12.0 - holes, rel=1e-3)
