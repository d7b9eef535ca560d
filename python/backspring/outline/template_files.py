"""A template written as SVG, DXF or PDF at true size."""

from __future__ import annotations

import html
import io
import math
from collections.abc import Callable, Iterator

from backspring.outline.chain import Chain
from backspring.outline.several import PAD, PIVOT
from backspring.outline.template import TEXT_MM, Template
from backspring.unit_table import INCH_MM, MM_PER_POINT

_LINE_MM = 0.15
_PAGE_MM = (262.0, 188.0)  # what a printer reaches of an A4 or Letter sheet laid across
_MARK_MM = 5.0
_COLORS = {"notes": "#606060", "liner": "#0060a0", "stock": "#606060"}
_PLAIN = "#000000"


def _color(layer: str) -> str:
    """Draw what marks a place as notes are drawn."""
    return _COLORS["notes"] if layer.startswith((PIVOT, PAD)) else _COLORS.get(layer, _PLAIN)


def svg_text(template: Template) -> str:
    """Write it as SVG in mm."""
    width, height = template.width_mm, template.height_mm
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.4f}mm" height="{height:.4f}mm" '
        f'viewBox="0 0 {width:.4f} {height:.4f}">',
        f"<title>{html.escape(template.name)}</title>",
    ]
    layers = dict.fromkeys(shape.layer for shape in template.shapes)
    for layer in layers:
        style = f'fill="none" stroke="{_color(layer)}" stroke-width="{_LINE_MM}"'
        lines.append(f'<g id="{layer}" {style}>')
        lines += _svg_shapes(template, layer)
        lines.append("</g>")
    lines.append(f'<g id="words" font-family="sans-serif" font-size="{TEXT_MM}">')
    lines += [
        f'<text x="{word.at_mm.real:.4f}" y="{height - word.at_mm.imag:.4f}">'
        f"{html.escape(word.text)}</text>"
        for word in template.words
    ]
    return "\n".join([*lines, "</g>", "</svg>"]) + "\n"


def _svg_shapes(template: Template, layer: str) -> Iterator[str]:
    height = template.height_mm
    for shape in template.shapes:
        if shape.layer != layer:
            continue
        dashes = ' stroke-dasharray="1.5 1"' if shape.dashed else ""
        if shape.chain:
            yield f'<path d="{_svg_path(shape.chain, height)}"{dashes}/>'
        elif shape.hole:
            center, radius = shape.hole.center_mm, 0.5 * shape.hole.diameter_mm
            at = f'cx="{center.real:.9f}" cy="{height - center.imag:.9f}"'
            yield f'<circle {at} r="{radius:.9f}"{dashes}/>'
        elif shape.line:
            a, b = shape.line
            yield (
                f'<line x1="{a.real:.9f}" y1="{height - a.imag:.9f}" '
                f'x2="{b.real:.9f}" y2="{height - b.imag:.9f}"/>'
            )


def _svg_path(chain: Chain, height: float) -> str:
    def place(at: complex) -> str:
        return f"{at.real:.9f} {height - at.imag:.9f}"

    parts = [f"M {place(chain.vertices[0].at_mm)}"]
    for piece in chain.pieces:
        if not piece.bulge:
            parts.append(f"L {place(piece.end_mm)}")
            continue
        radius = f"{abs(piece.radius_mm):.9f}"
        wide = int(abs(piece.sweep_rad) > math.pi)
        parts.append(f"A {radius} {radius} 0 {wide} {int(piece.bulge < 0.0)} {place(piece.end_mm)}")
    return " ".join([*parts, "Z"])


def dxf_text(template: Template) -> str:
    """Write it as DXF R2010 in mm, with a layer a part. Needs ezdxf."""
    from ezdxf.filemanagement import new

    document = new("R2010", setup=["linetypes"])
    document.header["$INSUNITS"] = 4
    space = document.modelspace()
    layers = [*(s.layer for s in template.shapes), *(w.layer for w in template.words)]
    for layer in dict.fromkeys(layers):
        document.layers.add(layer, linetype="DASHED" if layer == "stock" else "CONTINUOUS")
    for shape in template.shapes:
        on = {"layer": shape.layer}
        if shape.chain:
            points = [(v.at_mm.real, v.at_mm.imag, v.bulge) for v in shape.chain.vertices]
            space.add_lwpolyline(points, format="xyb", close=True, dxfattribs=on)
        elif shape.hole:
            center = shape.hole.center_mm
            space.add_circle((center.real, center.imag), 0.5 * shape.hole.diameter_mm, on)
        elif shape.line:
            a, b = shape.line
            space.add_line((a.real, a.imag), (b.real, b.imag), on)
    for word in template.words:
        text = space.add_text(word.text, height=TEXT_MM, dxfattribs={"layer": word.layer})
        text.set_placement((word.at_mm.real, word.at_mm.imag))
    written = io.StringIO()
    document.write(written)
    return written.getvalue()


def pdf_bytes(template: Template) -> bytes:
    """Write it as PDF, in pages with marks to join them by where it is too large for one."""
    from matplotlib.backends.backend_pdf import PdfPages
    from matplotlib.figure import Figure

    across = max(1, math.ceil(template.width_mm / (_PAGE_MM[0] - 2.0 * _MARK_MM)))
    down = max(1, math.ceil(template.height_mm / (_PAGE_MM[1] - 2.0 * _MARK_MM)))
    single = across == down == 1
    page = (template.width_mm, template.height_mm) if single else _PAGE_MM
    step = (page[0] - 2.0 * _MARK_MM, page[1] - 2.0 * _MARK_MM)
    written = io.BytesIO()
    with PdfPages(written, metadata={"Title": template.name, "CreationDate": None}) as pages:
        for row in range(down):
            for column in range(across):
                figure = Figure(figsize=(page[0] / INCH_MM, page[1] / INCH_MM))
                axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
                left = 0.0 if single else column * step[0] - _MARK_MM
                low = 0.0 if single else row * step[1] - _MARK_MM
                axes.set(xlim=(left, left + page[0]), ylim=(low, low + page[1]))
                axes.set_axis_off()
                draw_template(axes.plot, axes.text, template)
                if not single:
                    where = f"row {row + 1} of {down}, column {column + 1} of {across}"
                    name = f"{template.name}, {where} from the lower left: join at the crosses"
                    _marks(axes.plot, axes.text, left, low, page, name)
                pages.savefig(figure)
    return written.getvalue()


Draw = Callable[..., object]


def draw_template(plot: Draw, text: Draw, template: Template) -> None:
    """Draw it with an axes' two functions, in mm."""
    width = _LINE_MM / MM_PER_POINT
    for shape in template.shapes:
        style = {"color": _color(shape.layer), "lw": width}
        if shape.chain:
            places = [*_followed(shape.chain)]
        elif shape.hole:
            radius = 0.5 * shape.hole.diameter_mm
            turns = [math.tau * i / 180 for i in range(181)]
            places = [
                shape.hole.center_mm + radius * complex(math.cos(t), math.sin(t)) for t in turns
            ]
        else:
            places = [*(shape.line or ())]
        dashes = (0, (6, 4)) if shape.dashed else "-"
        plot([p.real for p in places], [p.imag for p in places], ls=dashes, **style)
    for word in template.words:
        size = TEXT_MM / MM_PER_POINT
        text(word.at_mm.real, word.at_mm.imag, word.text, fontsize=size, parse_math=False)


def _followed(chain: Chain) -> Iterator[complex]:
    for piece in chain.pieces:
        steps = max(1, math.ceil(abs(piece.sweep_rad) / math.radians(1.0)))
        yield from (piece.point_mm(i / steps) for i in range(steps))
    yield chain.vertices[0].at_mm


def _marks(
    plot: Draw, text: Draw, left: float, low: float, page: tuple[float, float], name: str
) -> None:
    """Draw a cross at each corner of the part that only this page has."""
    right, top = left + page[0] - _MARK_MM, low + page[1] - _MARK_MM
    for x in (left + _MARK_MM, right):
        for y in (low + _MARK_MM, top):
            plot([x - 3.0, x + 3.0], [y, y], color=_PLAIN, lw=0.4)
            plot([x, x], [y - 3.0, y + 3.0], color=_PLAIN, lw=0.4)
    text(left + _MARK_MM + 4.0, low + 1.5, name, fontsize=7.0, parse_math=False)
