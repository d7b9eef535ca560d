"""What keeps a picture from growing without end while it is read."""

from __future__ import annotations

import io
from collections.abc import Iterator
from xml.etree import ElementTree as ET

_MOST_DEPTH = 100
MOST_SHAPES = 20_000
_MOST_LETTERS = 2_000_000
_MOST_ELEMENTS = 100_000
# Of one attribute, or of a style; paths have a bound of their own, a picture in it may be large.
_MOST_IN_ONE = 100_000
_MOST_ATTRIBUTES = 1000
_PATHS = ("d", "points")
_HREFS = ("href", "{http://www.w3.org/1999/xlink}href")
_Sizes = dict[str, int | None]


def bounded_root(content: bytes) -> ET.Element:
    """Refuse entities, deep nests, and copies of copies that come to too many shapes.

    Raises ValueError; returns the picture's own element.
    """
    if b"<!ENTITY" in content or b"<!\0E\0N\0T" in content:
        raise ValueError("no SVG drawing to read: it defines entities; save it as plain SVG")
    try:
        root = _root(content)
    except (ET.ParseError, LookupError) as error:
        raise ValueError(f"no SVG drawing: {error}") from error
    if root.tag.rpartition("}")[2] != "svg":
        raise ValueError(f"no SVG drawing, but <{root.tag.rpartition('}')[2]}>")
    if sum(len(each.get(name, "")) for each in root.iter() for name in _PATHS) > _MOST_LETTERS:
        raise ValueError("paths too long to be the outlines of a knife")
    known = {each.get("id", ""): each for each in root.iter() if each.get("id")}
    try:
        size = _size(root, known, {})
    except RecursionError as error:
        raise ValueError("copies of copies go too deep") from error
    if size > MOST_SHAPES:
        raise ValueError(f"more than {MOST_SHAPES} shapes")
    return root


def _root(content: bytes) -> ET.Element:
    """Parse, and stop at the first element that is nested too deep."""
    depth, count, root = 0, 0, None
    element: ET.Element
    for event, element in ET.iterparse(io.BytesIO(content), ("start", "end")):
        root = element if root is None else root
        depth += 1 if event == "start" else -1
        if depth > _MOST_DEPTH:
            raise ValueError(f"groups nested more than {_MOST_DEPTH} deep")
        if event == "end":
            _require_short(element)
            continue
        count += 1
        if count > _MOST_ELEMENTS:
            raise ValueError(f"more than {_MOST_ELEMENTS} elements: keep the outlines alone")
    if root is None:
        raise ValueError("no SVG drawing")
    return root


def _require_short(element: ET.Element) -> None:
    """Refuse what the library of such pictures would look through for minutes."""
    long = any(
        len(each) > _MOST_IN_ONE
        for name, each in element.attrib.items()
        if name not in _PATHS and name not in _HREFS
    )
    style = element.tag.rpartition("}")[2] == "style" and len(element.text or "") > _MOST_IN_ONE
    if long or style or len(element.attrib) > _MOST_ATTRIBUTES:
        raise ValueError("an attribute or a style too long to be of the outlines of a knife")


def _size(element: ET.Element, known: dict[str, ET.Element], sizes: _Sizes) -> int:
    """Count shapes, with copies of what an element uses; ValueError where it uses itself."""
    size = 1 + sum(_size(child, known, sizes) for child in element)
    for name in _used(element):
        if name not in known:
            raise ValueError(f'uses "{name[:40]}", which the drawing does not hold')
        if name not in sizes:
            sizes[name] = None
            sizes[name] = _size(known[name], known, sizes)
        within = sizes[name]
        if within is None:
            raise ValueError(f'"{name[:40]}" uses itself')
        size += within
    return size


def _used(element: ET.Element) -> Iterator[str]:
    if element.tag.rpartition("}")[2] != "use":
        return
    for key in _HREFS:
        reference = element.get(key)
        if reference is None:
            continue
        if not reference.startswith("#"):
            raise ValueError("uses a part of another file, which is not read")
        yield reference[1:]
        return
