"""Fingerprints of a design's content."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

_SHAPE = ("spring", "tang", "fit")


def fingerprint(content: Mapping[str, Any]) -> str:
    """Return the SHA-256 of plain data; the order of its keys does not count."""
    # Loaded where an answer names its design, which text on a terminal does not.
    import hashlib
    import json

    text = json.dumps(content, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def shape_of(content: Mapping[str, Any]) -> dict[str, Any]:
    """Return the part of a design's content that readings depend on."""
    shape = {key: content.get(key) for key in _SHAPE}
    for name, blade in content.get("blades", {}).items():
        shape[name] = {key: blade.get(key) for key in ("end", "pad", *_SHAPE[1:])}
    return shape
