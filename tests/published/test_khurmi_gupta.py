"""R. S. Khurmi and J. K. Gupta, Theory of Machines, ch. 10, example 10.15, p. 286: a journal.

Read in a worked notebook that follows the book (edition not stated there) and recomputed: journal
of 60 mm, 2000 N, friction 0.03, 1440 rev/min take 271.4 W; tolerance half of the last digit.

Derived: 50 N on a pin of 3 mm with friction 0.15 takes 11.25 N mm, thin-pin form, exact.
"""

from math import pi

from agreement import Agree
from backspring import _core as core


def _pin_torque_nmm(force_n: float, friction: float, diameter_mm: float) -> float:
    touch = core.Touch(x_mm=0.0, height_mm=0.0, slope=0.0, force_n=force_n)
    contact = core.Contact(touches=[touch, core.Touch()], count=1)
    pin = core.Friction(spring=0.0, pivot=friction, pivot_pin_mm=diameter_mm)
    return core.friction_torque_nmm(contact, pin, 0.0)


def test_example_10_15_power_lost_in_a_journal(agree: Agree) -> None:
    radians_per_s = 2.0 * pi * 1440.0 / 60.0
    power_w = _pin_torque_nmm(2000.0, 0.03, 60.0) / 1000.0 * radians_per_s
    agree("example 10.15, power lost in the journal [W]", power_w, 271.4, abs=0.05)


def test_pivot_pin_of_a_knife(agree: Agree) -> None:
    agree("pivot pin of a knife, torque [N mm]", _pin_torque_nmm(50.0, 0.15, 3.0), 11.25, rel=1e-12)


def test_pin_carries_the_resultant_of_a_tilted_contact(agree: Agree) -> None:
    """A force that stands square to a face of slope 3/4 is 5/4 of its outward part."""
    touch = core.Touch(x_mm=0.0, height_mm=0.0, slope=0.75, force_n=40.0)
    contact = core.Contact(touches=[touch, core.Touch()], count=1)
    pin = core.Friction(spring=0.0, pivot=0.15, pivot_pin_mm=3.0)
    agree(
        "the same under a tilted contact, torque [N mm]",
        core.friction_torque_nmm(contact, pin, 0.0),
        11.25,
        rel=1e-12,
    )
