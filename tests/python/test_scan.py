"""Scans of drawn parts come back as drawn, and say how sure they are."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

import backspring as bs
from backspring.cli import main
from backspring.outline.reading import OutlineReading, read_outline
from backspring.outline.scan_fit import circle_through, noise_of
from outline_pen import REPO, VALUES, demo
from scanner import Light, saved, scanned, sheets

DUNLIN = REPO / "data" / "scans" / "dunlin.png"
# Of a face at 300 dpi: a twentieth of a pixel. The study in tests/oracle has 60 scans.
WITHIN_MM = 0.004


@pytest.fixture(scope="module")
def heron(tmp_path_factory: pytest.TempPathFactory) -> OutlineReading:
    """A noisy scan under uneven light: whole blade, turned parts, seen from the other side."""
    light = Light(blur_px=0.8, noise=0.015, uneven=0.2)
    parts = sheets(demo("heron").core, whole_blade=True)
    picture = scanned(parts, 300.0, np.random.default_rng(7), light, flipped=True)
    path = saved(picture, tmp_path_factory.mktemp("scan") / "heron.png")
    return read_outline(path, values=VALUES, scale="100 mm = 1181.1024 px")


@pytest.fixture(scope="module")
def dunlin() -> OutlineReading:
    return read_outline(DUNLIN)


def test_a_scan_comes_back_as_drawn(heron: OutlineReading) -> None:
    drawn, read = demo("heron").core, heron.design.core
    for name in ("open_mm", "half_stop_mm", "closed_mm", "pivot_mm"):
        assert getattr(read.tang, name) == pytest.approx(getattr(drawn.tang, name), abs=WITHIN_MM)
    assert read.fit.preload_mm == pytest.approx(drawn.fit.preload_mm, abs=2.0 * WITHIN_MM)
    assert read.tang.corner_open_mm == pytest.approx(drawn.tang.corner_open_mm, abs=0.03)
    assert read.spring.support.rear_pin_mm == pytest.approx(34.0, abs=WITHIN_MM)
    assert [hole.diameter_mm for hole in read.spring.holes] == pytest.approx([2.0, 2.0], abs=0.005)
    forces = [bs.check(each).travel.peak_force_n for each in (heron.design, demo("heron"))]
    assert forces[0] == pytest.approx(forces[1], rel=0.01)


def test_a_scan_knows_how_sure_it_is(heron: OutlineReading) -> None:
    scan, tang = heron.scan, demo("heron").core.tang
    assert scan is not None and set(scan.faces_mm) == {"open", "half_stop", "closed"}
    for name, sd_mm in scan.faces_mm.items():
        off = getattr(heron.faces, f"{name}_mm") - getattr(tang, f"{name}_mm")
        assert abs(off) < 4.0 * sd_mm < 0.01
    assert scan.edge_mm > scan.thickness_mm
    told = heron.report()
    assert "perspective of a photo" in told and "11.81 px/mm (300 dpi), as given" in told
    assert "thou" in heron.report("in")


def test_noise_that_neighbours_share_counts_once() -> None:
    """The mean of correlated places is as sure as their long-range density says."""
    dice = np.random.default_rng(3)
    step, length = 0.05, 400
    rows = []
    for _ in range(400):
        white = dice.normal(0.0, 0.01, length + 4)
        rows.append(np.convolve(white, np.ones(5) / 5.0, "valid"))
    noise = noise_of(rows, step, step)
    seen = float(np.std([row.mean() for row in rows]))
    # 400 rows tell a deviation to 3.5 %.
    assert math.sqrt(noise.density_mm3 / (step * length)) == pytest.approx(seen, rel=0.12)
    assert noise.rms_mm == pytest.approx(0.01 / math.sqrt(5.0), rel=0.03)


def test_a_part_of_a_circle_gives_its_radius_back() -> None:
    """The algebraic fit of a noisy quarter comes out small; distances themselves do not."""
    dice, turns = np.random.default_rng(5), np.linspace(0.0, 0.5 * math.pi, 60)
    radii = []
    for _ in range(200):
        points = 2.0 * np.exp(1j * turns) + 0.02 * dice.normal(size=60) * np.exp(1j * turns)
        circle = circle_through(points + 3.0 - 1.0j)
        assert circle is not None
        radii.append(circle.radius_mm)
    # One fit is good to 0.02; the mean of 200 to 0.0015.
    assert float(np.mean(radii)) == pytest.approx(2.0, abs=0.006)


def _dusty(image: Image.Image) -> Image.Image:
    image = image.copy()
    for at in ((30, 30), (500, 420), (1000, 900)):
        image.paste(20, (*at, at[0] + 4, at[1] + 4))
    clear = Image.new("RGBA", image.size, (0, 0, 0, 0))
    clear.paste(
        Image.new("RGBA", image.size, (30, 30, 30, 255)), mask=image.point(lambda g: 255 - g)
    )
    return clear


def _deep(image: Image.Image) -> Image.Image:
    """16 bits, the light inverted: bright parts on a dark ground."""
    grey = np.asarray(image).astype(np.float64) / 255.0
    linear = np.where(grey <= 0.04045, grey / 12.92, ((grey + 0.055) / 1.055) ** 2.4)
    dark = 0.92 - linear
    coded = np.where(dark <= 0.0031308, 12.92 * dark, 1.055 * dark ** (1 / 2.4) - 0.055)
    return Image.fromarray(np.round(65535.0 * coded).astype(np.uint16))


def _turned(image: Image.Image) -> Image.Image:
    return image.transpose(Image.Transpose.ROTATE_90).convert("CMYK")


EXIF = Image.Exif()
EXIF[0x0112] = 6


@pytest.mark.parametrize(
    ("name", "change", "options", "note", "within_mm"),
    [
        ("dust.png", _dusty, {}, "specks of dust left out", 0.06),
        ("deep.tif", _deep, {}, "", WITHIN_MM),
        ("turned.jpg", _turned, {"exif": EXIF, "quality": 95}, "turned as its file", 0.01),
    ],
)
def test_a_picture_of_another_kind_is_read_alike(
    name: str,
    change: Callable[[Image.Image], Image.Image],
    options: dict[str, object],
    note: str,
    within_mm: float,
    tmp_path: Path,
) -> None:
    with Image.open(DUNLIN) as image:
        change(image).save(tmp_path / name, **options)
    reading = read_outline(tmp_path / name, dpi=300)
    assert reading.faces.open_mm == pytest.approx(4.6, abs=within_mm)
    assert reading.faces.closed_mm == pytest.approx(4.6, abs=within_mm)
    assert note in "; ".join(reading.notes)


def test_a_drilled_hole_tells_where_the_edges_are(dunlin: OutlineReading) -> None:
    """Steel that a scanner sees 0.02 mm too small all round has holes 0.04 mm too wide."""
    as_seen, known = dunlin, read_outline(DUNLIN, hole="1.46 mm")
    assert as_seen.scan is not None and known.scan is not None
    out = known.scan.moved_mm
    assert out == pytest.approx(0.02, abs=WITHIN_MM)
    assert known.joint.pin_hole_mm == pytest.approx([1.46, 1.46], abs=WITHIN_MM)
    for name in ("open_mm", "half_stop_mm", "closed_mm"):
        moved = getattr(known.faces, name) - getattr(as_seen.faces, name)
        assert moved == pytest.approx(out, abs=1e-4)
    corners = known.faces.corner_open_mm, as_seen.faces.corner_open_mm
    assert corners[0] - corners[1] == pytest.approx(out, abs=1e-3)
    pads = [each.joint.thickness_mm[-1][1] for each in (known, as_seen)]
    assert pads[0] - pads[1] == pytest.approx(2.0 * out, abs=1e-3)


def test_the_command_writes_design_and_picture(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    design, picture = tmp_path / "dunlin.toml", tmp_path / "taken.png"
    words = ["outline", str(DUNLIN), "--steel", "1095", "--hardness", "46", "--width", "3.2 mm"]
    words += ["-o", str(design), "--picture", str(picture), "--json"]
    assert main(words) == 0
    scan = json.loads(capsys.readouterr().out)["data"]["scan"]
    assert scan["scale_from"] == "file"
    assert scan["px_per_mm"] == pytest.approx(300.0 / 25.4, rel=1e-4)
    assert bs.check(bs.load(design)).status == "pass"
    assert picture.stat().st_size > 10_000
