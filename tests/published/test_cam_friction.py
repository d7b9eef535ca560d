"""Derived: an eccentric disc under a flat face with Coulomb friction, by statics.

Disc of radius R whose centre lies e from the pivot, at t from the direction of the face; it touches
at (e cos t, e sin t + R) from the pivot. A normal force N needs N [e cos t + mu (e sin t + R)] to
lift and gives back N [e cos t - mu (e sin t + R)]; between t* = arccos(mu R/(e sqrt(1 + mu^2))) -
arctan mu and 90 degrees the cam holds still by itself. e = 3, R = 5, mu = 0.15, N = 20, figures
evaluated to 10 digits, hence 1e-9.

The library has no such cam, but a tang can be one: with open and closed faces at R, the half-stop
face at e + R and both corners of radius R, its rear is half a disc about (-e, 0), and at blade
angle theta its centre lies at theta from the spring's axis. The bent spring's face leans by phi, so
the cam stands at t = theta - phi to the face, and its normal force is the outward one over cos phi.
With that the figures hold to 1e-9 again, whatever the spring.
"""

from math import acos, atan, cos, degrees, hypot, radians, sin, sqrt

import pytest
from scipy.optimize import brentq

from agreement import Agree
from backspring import _core as core
from stations import stations

ECCENTRIC, RADIUS, MU, FORCE = 3.0, 5.0, 0.15, 20.0
LIFTING_AND_RETURNING = [
    (0.0, 75.0, 45.0),
    (30.0, 71.46152423, 32.46152423),
    (60.0, 52.79422863, 7.20577137),
    (75.0, 39.22247514, -8.16418973),
    (90.0, 24.0, -24.0),
]
SELF_LOCKING_DEG = 67.15533446

PIVOT_MM = 30.0
CAM = core.Design(
    spring=core.Spring(
        thickness=stations([(0.0, 3.6), (46.0, 2.4)]),
        width_mm=2.3,
        support=core.Support(kind=core.SupportKind.clamped),
    ),
    strength=core.Strength(yield_mpa=core.Band(value=1300.0, low=1200.0, high=1400.0)),
    blades=[
        core.Blade(
            pad=core.Pad(start_mm=22.0, end_mm=46.0),
            tang=core.Tang(
                pivot_mm=PIVOT_MM,
                open_mm=RADIUS,
                half_stop_mm=ECCENTRIC + RADIUS,
                closed_mm=RADIUS,
                corner_open_mm=RADIUS,
                corner_closed_mm=RADIUS,
                front_mm=10.0,
            ),
            fit=core.Fit(preload_mm=0.5, dial_mm=PIVOT_MM),
        )
    ],
    friction=core.Friction(spring=MU),
)


def _touching(t_deg: float) -> core.Contact:
    """The cam's contact, written down from its geometry."""
    t = radians(t_deg)
    touch = core.Touch(
        x_mm=ECCENTRIC * cos(t), height_mm=ECCENTRIC * sin(t) + RADIUS, slope=0.0, force_n=FORCE
    )
    return core.Contact(touches=[touch, core.Touch()], count=1)


def _lean(contact: core.Contact) -> float:
    return atan(contact.touches[0].slope)


def _per_force(contact: core.Contact) -> float:
    """What turns a torque at the contact's normal force into one at the figures' force."""
    return FORCE * cos(_lean(contact)) / contact.force_n


def _blade_angle_deg(t_deg: float) -> float:
    """Blade angle at which the cam stands at t to the face."""

    def miss(angle_deg: float) -> float:
        return angle_deg - degrees(_lean(core.contact_at(CAM, angle_deg))) - t_deg

    return brentq(miss, t_deg, t_deg + 30.0, xtol=1e-12, rtol=1e-15)


@pytest.mark.parametrize(("t_deg", "lifting", "returning"), LIFTING_AND_RETURNING)
def test_torque_with_friction(agree: Agree, t_deg: float, lifting: float, returning: float) -> None:
    frictionless = FORCE * ECCENTRIC * cos(radians(t_deg))
    friction = core.friction_torque_nmm(_touching(t_deg), CAM.friction, 0.0)
    agree(
        f"cam at {t_deg:g} deg, torque to lift [N mm]", frictionless + friction, lifting, rel=1e-9
    )
    agree(
        f"cam at {t_deg:g} deg, torque given back [N mm]",
        frictionless - friction,
        returning,
        rel=1e-9,
    )


def test_cam_holds_itself_from_the_locking_angle_on(agree: Agree) -> None:
    locking = degrees(acos(MU * RADIUS / (ECCENTRIC * sqrt(1.0 + MU**2))) - atan(MU))
    assert locking == pytest.approx(SELF_LOCKING_DEG, rel=1e-9)

    def given_back(t_deg: float) -> float:
        friction = core.friction_torque_nmm(_touching(t_deg), CAM.friction, 0.0)
        return FORCE * ECCENTRIC * cos(radians(t_deg)) - friction

    agree(
        "torque given back where the cam locks [N mm]", given_back(SELF_LOCKING_DEG), 0.0, abs=1e-7
    )
    assert given_back(SELF_LOCKING_DEG - 0.01) > 0.0 > given_back(SELF_LOCKING_DEG + 0.01)


@pytest.mark.parametrize("slope", [-0.4, 0.0, 0.05, 0.75])
def test_friction_on_a_tilted_face(agree: Agree, slope: float) -> None:
    """mu N times the arm of the face's line about the pivot, any contact point."""
    x, height, outward = 2.3, 4.1, 33.0
    touch = core.Touch(x_mm=100.0 + x, height_mm=height, slope=slope, force_n=outward)
    contact = core.Contact(touches=[touch, core.Touch()], count=1)
    along = (1.0 / hypot(1.0, slope), slope / hypot(1.0, slope))
    arm = abs(x * along[1] - height * along[0])
    normal = outward * hypot(1.0, slope)
    found = core.friction_torque_nmm(contact, CAM.friction, 100.0)
    agree(
        f"friction's torque on a face of slope {slope:g} [N mm]",
        found,
        MU * normal * arm,
        rel=1e-10,
    )


def test_the_cam_is_a_tang_within_the_rules() -> None:
    assert core.faults(CAM) == []


@pytest.mark.parametrize("angle_deg", [15.0, 30.0, 45.0, 60.0, 75.0, 90.0])
def test_tang_shaped_as_the_cam_touches_where_the_cam_does(angle_deg: float) -> None:
    contact = core.contact_at(CAM, angle_deg)
    assert contact.count == 1
    touch, angle, lean = contact.touches[0], radians(angle_deg), _lean(contact)
    along = ECCENTRIC * cos(angle) - RADIUS * sin(lean)
    outward = ECCENTRIC * sin(angle) + RADIUS * cos(lean)
    assert (touch.x_mm - PIVOT_MM, touch.height_mm) == pytest.approx((along, outward), rel=1e-9)


@pytest.mark.parametrize(("t_deg", "lifting", "returning"), LIFTING_AND_RETURNING[1:])
def test_tang_shaped_as_the_cam_needs_the_cams_torque(
    agree: Agree, t_deg: float, lifting: float, returning: float
) -> None:
    contact = core.contact_at(CAM, _blade_angle_deg(t_deg))
    share = _per_force(contact)
    friction = core.friction_torque_nmm(contact, CAM.friction, PIVOT_MM)
    agree(
        f"tang as cam at {t_deg:g} deg, torque to lift [N mm]",
        (contact.torque_nmm + friction) * share,
        lifting,
        rel=1e-9,
    )
    agree(
        f"tang as cam at {t_deg:g} deg, torque given back [N mm]",
        (contact.torque_nmm - friction) * share,
        returning,
        rel=1e-9,
    )


@pytest.mark.parametrize(("t_deg", "lifting", "returning"), LIFTING_AND_RETURNING[1:])
def test_sweep_opens_with_the_lifting_torque_and_closes_with_the_returning_one(
    agree: Agree, t_deg: float, lifting: float, returning: float
) -> None:
    angle_deg = _blade_angle_deg(t_deg)
    share = _per_force(core.contact_at(CAM, angle_deg))
    row = core.sweep(CAM, 1.0, angle_deg, angle_deg)
    agree(
        f"sweep of the tang at {t_deg:g} deg, opening [N mm]",
        row.opening_torque_nmm[0] * share,
        lifting,
        rel=1e-9,
    )
    agree(
        f"sweep of the tang at {t_deg:g} deg, closing [N mm]",
        row.closing_torque_nmm[0] * share,
        returning,
        rel=1e-9,
    )
