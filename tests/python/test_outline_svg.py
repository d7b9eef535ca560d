"""The Heron as an SVG picture of another hand, turned, mirrored and scaled."""

from __future__ import annotations

from pathlib import Path

import pytest

from backspring.outline.chain import Chain
from backspring.outline.drawn import draw
from backspring.outline.reading import read_outline
from outline_pen import VALUES, demo, is_heron

SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="{w}" viewBox="0 0 200 200">'
    '<g transform="{way}"><g id="spring">{spring}</g><g id="tang">{tang}</g>'
    '<g id="liner">{liner}</g></g><text x="9" y="9">words</text></svg>'
)


def _svg(width: str, way: str) -> str:
    o = draw(demo("heron").core)

    def path(chain: Chain) -> str:
        parts = [f"M{chain.vertices[0].at_mm.real:.9f},{-chain.vertices[0].at_mm.imag:.9f}"]
        for piece in chain.pieces:
            end = f"{piece.end_mm.real:.9f},{-piece.end_mm.imag:.9f}"
            r = abs(piece.radius_mm) if piece.bulge else 0.0
            flag = int(piece.bulge < 0.0)
            parts.append(f"A{r:.9f},{r:.9f} 0 0 {flag} {end}" if r else f"L{end}")
        return f'<path d="{" ".join(parts)}z"/>'

    def circle(at: complex, width: float) -> str:
        return f'<circle cx="{at.real:.9f}" cy="{-at.imag:.9f}" r="{0.5 * width}"/>'

    return SVG.format(
        w=width, way=way,
        spring=path(o.spring) + "".join(circle(h.center_mm, h.diameter_mm) for h in o.spring_holes),
        tang=path(o.tang) + circle(o.tang_hole.center_mm, o.tang_hole.diameter_mm),
        liner="".join(circle(at, 2.0) for at in (o.pivot_mm, o.middle_mm, o.rear_mm)),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("width", "way"),
    [
        ("200mm", "translate(120 60)"),
        ("20cm", "translate(120 60) rotate(33)"),
        ("200mm", "translate(90 60) scale(-1 1)"),
        ("100mm", "matrix(0 2 2 0 80 90)"),
        (f"{200 / 25.4:.9f}in", "translate(80 60) rotate(180) scale(1 -1)"),
    ],
)
def test_pictures_turned_mirrored_and_scaled(width: str, way: str, tmp_path: Path) -> None:
    path = tmp_path / "drawn.svg"
    path.write_text(_svg(width, way))
    reading = read_outline(path, values=VALUES)
    assert is_heron(reading, within=2e-6)
    assert reading.left_out == {"Text": 1}
