"""A picture as SVG that stands inside an HTML page, with its text as text."""

from __future__ import annotations

import io
import re
from xml.etree import ElementTree

import matplotlib
from matplotlib.figure import Figure

_DPI = 150.0
_NAMESPACE = re.compile(r"^\{[^}]*\}")
# What a drawing says of itself, and a style that would hold for the whole page.
_LEFT_OUT = ("metadata", "style")
# What that style says, for the drawing alone.
_STROKES = {"stroke-linejoin": "round", "stroke-linecap": "butt"}
_PLACE = re.compile(r"url\(#([^)]*)\)")


def inline_svg(figure: Figure, label: str, prefix: str) -> str:
    """Write a figure as an SVG element as wide as it is given room, the same every time.

    `label` is read out in its place; `prefix` keeps its names apart from those of the page's other
    drawings.
    """
    drawn = io.BytesIO()
    with matplotlib.rc_context({"svg.hashsalt": prefix, "svg.fonttype": "none"}):
        figure.savefig(drawn, format="svg", dpi=_DPI, metadata={"Date": None, "Creator": None})
    root = ElementTree.fromstring(drawn.getvalue())
    for parent in [*root.iter()]:
        for child in [*parent]:
            if _plain(child.tag) in _LEFT_OUT:
                parent.remove(child)
    for element in root.iter():
        _make_plain(element, prefix)
    _drop_unused_names(root)
    for name in ("width", "height", "version"):
        root.attrib.pop(name, None)
    root.attrib |= {"role": "img", "aria-label": label, **_STROKES}
    return ElementTree.tostring(root, encoding="unicode")


def _plain(name: str) -> str:
    """Leave out the namespace, which a page gives by itself to all inside its svg elements."""
    return _NAMESPACE.sub("", name)


def _make_plain(element: ElementTree.Element, prefix: str) -> None:
    element.tag = _plain(element.tag)
    given = {_plain(name): value for name, value in element.attrib.items()}
    element.attrib.clear()
    for name, value in given.items():
        if name == "id":
            value = f"{prefix}-{value}"
        elif name == "href" and value.startswith("#"):
            value = f"#{prefix}-{value[1:]}"
        else:
            value = _PLACE.sub(rf"url(#{prefix}-\1)", value)
        element.set(name, value)


def _drop_unused_names(root: ElementTree.Element) -> None:
    """Keep the names that something in the drawing is found by: others may stand twice."""
    used = {
        found
        for element in root.iter()
        for name, value in element.attrib.items()
        for found in ([value[1:]] if name == "href" else _PLACE.findall(value))
    }
    for element in root.iter():
        if element.get("id") not in used:
            element.attrib.pop("id", None)
