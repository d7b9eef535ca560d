"""Influence along the spring and the gradient, as Python shows them."""

from __future__ import annotations

import json
import pickle
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import picture

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"


@pytest.fixture(scope="module")
def heron() -> bs.Design:
    return bs.load(DESIGNS / "heron.toml")


@pytest.fixture(scope="module")
def found(heron: bs.Design) -> bs.Influence:
    return bs.influence(heron)


def over(found: bs.Influence, name: str) -> float:
    """Change of a result for a pass of 0.1 mm over all stations."""
    return float(np.trapezoid(found[name], found.station_mm))


@pytest.mark.parametrize("name", ["heron", "kestrel", "osprey", "wren"])
def test_a_pass_over_everything_is_grinding_as_long_as_it_is_light(name: str) -> None:
    design = bs.load(DESIGNS / f"{name}.toml")
    found = bs.influence(design)
    depth_mm = 1e-5
    region = (float(found.station_mm[0]), float(found.station_mm[-1]))
    before, after = bs.check(design), bs.check(bs.grind(design, back=depth_mm, region=region))
    rate = 0.1 * (after.stiffness_n_per_mm - before.stiffness_n_per_mm) / depth_mm
    # Rounding of the difference, and the curvature of what a step of 1e-5 mm sees: 1e-5 or so.
    assert over(found, "stiffness_n_per_mm") == pytest.approx(rate, rel=1e-4)
    lost = max(s.peak_torque_nmm for s in after.strokes) - max(
        s.peak_torque_nmm for s in before.strokes
    )
    assert over(found, "peak_torque_nmm") == pytest.approx(0.1 * lost / depth_mm, rel=1e-4)


def test_a_pass_matters_where_the_moment_is(found: bs.Influence) -> None:
    pull = found["peak_pull_n"]
    assert np.all(pull[found.station_mm < 30.0] <= 0.0)
    near_root = pull[(found.station_mm > 2.0) & (found.station_mm < 12.0)]
    near_pad = pull[found.station_mm > 28.0]
    assert near_root.max() < 8.0 * near_pad.min()


def test_with_the_rear_pin_out_nothing_changes(found: bs.Influence) -> None:
    assert np.all(found["reading_unloaded_closed_mm"] == 0.0)
    assert np.any(found["reading_loaded_closed_mm"] != 0.0)


def test_the_belly_stops_at_the_pad(heron: bs.Design) -> None:
    assert bs.influence(heron, face="belly", spacing="1 mm").station_mm[-1] == 27.0


def test_the_gradient_is_by_result_then_by_key(heron: bs.Design) -> None:
    slopes = bs.gradient(heron)
    step = 1e-4
    pulls = [
        max(
            stroke.peak_pull_n or 0.0
            for stroke in bs.check(heron.replace(**{"fit.preload": preload})).strokes
        )
        for preload in (0.9 - step, 0.9 + step)
    ]
    expected = (pulls[1] - pulls[0]) / (2.0 * step)
    assert slopes["peak_pull_n"]["fit.preload"] == pytest.approx(expected, rel=1e-6)
    assert slopes["reading_unloaded_closed_mm"]["spring.width"] == 0.0


def test_it_shows_itself_and_pickles(found: bs.Influence) -> None:
    assert repr(found).startswith("Heron: pull falls most at ")
    assert "<table>" in found._repr_html_()
    assert "thou" in found.report("in")
    again = pickle.loads(pickle.dumps(found))
    assert json.dumps(again.to_dict(), allow_nan=False) == json.dumps(found.to_dict())
    assert set(found.to_dict()["change"]) == set(found.value)


@pytest.mark.parametrize(
    ("options", "message"),
    [
        ({"face": "pad"}, 'face: must be "back" or "belly", got \'pad\''),
        ({"spacing": "0 mm"}, "spacing_mm: must be at least 0.05 mm, got 0 mm"),
        ({"spacing": "1 N"}, 'spacing: must be a length, got "1 N", which is a force'),
    ],
)
def test_wrong_use_is_told(heron: bs.Design, options: dict[str, str], message: str) -> None:
    with pytest.raises(bs.InvalidInput) as told:
        bs.influence(heron, **options)  # type: ignore[arg-type]
    assert str(told.value) == message


def test_the_picture_shows_the_curves(found: bs.Influence) -> None:
    figure = picture.influence(found, units="in")
    _, pull, stress, readings = (ax for ax in figure.axes if ax.get_label() != "<colorbar>")
    drawn = pull.lines[0]
    lbf_n, inch_mm = 4.4482216152605, 25.4  # NIST SP 811, appendix B
    # In inches all is for a thou off a tenth of an inch, not 0.1 mm off one mm.
    share = 0.0254 * 2.54 / 0.1
    assert drawn.get_xdata()[0] * inch_mm == pytest.approx(-34.0)
    assert min(drawn.get_ydata()) * lbf_n == pytest.approx(share * found["peak_pull_n"].min())
    assert "ksi" in stress.get_ylabel() and "thou" in readings.get_ylabel()
    assert len([line for line in readings.lines if "reading" in str(line.get_label())]) == 2


def test_a_design_without_a_nail_nick_is_drawn_by_its_torque() -> None:
    bare = bs.load(DESIGNS / "heron.toml").replace(
        **{"blade.nail_nick": None, "targets.pull": None}
    )
    found = bs.influence(bare)
    assert "peak_pull_n" not in found.value
    assert repr(found).startswith("Heron: torque falls most")
    labels = [ax.get_ylabel() for ax in picture.influence(found).axes]
    assert any(label.startswith("torque") for label in labels)
