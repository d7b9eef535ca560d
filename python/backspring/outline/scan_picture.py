"""A scan or photograph as grey values. Needs Pillow: `pip install backspring[scan]`."""

from __future__ import annotations

import math
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring.outline.file_bounds import few
from backspring.unit_table import INCH_MM

MOST_PIXELS = 100_000_000
_MOST_BYTES = 700_000_000
# What Pillow calls a picture of 16 bits; others are turned into 8 bits of grey.
_DEEP = ("I;16", "I;16B", "I;16L", "I;16N", "I", "F")
# So many at a time, to spare memory.
_ROWS = 1024


@dataclass(frozen=True, slots=True)
class ScanPicture:
    """Grey values as they are stored, what the file says of its size, and what was done to it."""

    grey: npt.NDArray[np.uint8]
    mm_per_px: float | None
    notes: tuple[str, ...]


def read_picture(path: Path) -> ScanPicture:
    """Read a picture, turned as its file says; its size is judged before anything is decoded.

    Raises ValueError with what keeps it from being read.
    """
    from PIL import Image, ImageOps, UnidentifiedImageError

    if path.is_dir() or (path.exists() and not path.is_file()):
        raise ValueError("is no file")
    if path.stat().st_size > _MOST_BYTES:
        raise ValueError(f"larger than {_MOST_BYTES // 1_000_000} MB: crop it to the parts")
    if path.stat().st_size == 0:
        raise ValueError("the file is empty")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            with Image.open(path) as image:
                _require_few_pixels(*image.size)
                notes = [*_notes(image)]
                scale = _mm_per_px(image)
                turned = ImageOps.exif_transpose(image)
                return ScanPicture(_grey(turned), scale, tuple(notes))
        except UnidentifiedImageError as error:
            raise ValueError("no picture that can be read") from error
        except Image.DecompressionBombError as error:
            raise ValueError(_too_many("over 170 million")) from error
        except FileNotFoundError:
            raise
        # Of files that are broken in other ways the library raises what its parts raise.
        except (OSError, SyntaxError, LookupError, TypeError, ArithmeticError) as error:
            raise ValueError(f"no picture that can be read: {few([str(error)])[0]}") from error


def _require_few_pixels(across: int, up: int) -> None:
    if across * up > MOST_PIXELS:
        raise ValueError(_too_many(f"{across} x {up}"))


def _too_many(pixels: str) -> str:
    return (
        f"{pixels} pixels, more than {MOST_PIXELS // 1_000_000} million: crop the picture to the "
        "parts, or scan at 600 dpi"
    )


def _notes(image: Any) -> list[str]:
    notes = []
    pages = getattr(image, "n_frames", 1)
    if pages > 1:
        notes.append(f"picture: the first of {pages} pages was read")
    if image.getexif().get(0x0112, 1) not in (0, 1):
        notes.append("picture: turned as its file says")
    if _is_clear(image):
        notes.append("picture: what is clear in it was taken as white")
    return notes


def _is_clear(image: Any) -> bool:
    return "A" in image.getbands() or "transparency" in image.info


def _mm_per_px(image: Any) -> float | None:
    """Tell a pixel's size where the file says the same both ways."""
    tag = image.info.get("dpi")
    try:
        across, up = (float(each) for each in tag)
    except (TypeError, ValueError):
        return None
    if not (math.isfinite(across) and across > 1.0 and abs(up - across) < 1e-3 * across):
        return None
    return INCH_MM / across


def _grey(image: Any) -> npt.NDArray[np.uint8]:
    from PIL import Image

    if image.mode in _DEEP:
        return _of_deep(np.asarray(image))
    if _is_clear(image):
        over = image.convert("RGBA")
        image = Image.new("RGBA", over.size, "white")
        image.alpha_composite(over)
    if image.mode not in ("1", "L", "RGB"):
        image = image.convert("RGB")
    return np.asarray(image.convert("L"))


def _of_deep(values: npt.NDArray[Any]) -> npt.NDArray[np.uint8]:
    """Spread 16 bits, or other numbers, over 8: the grey of an edge needs no more."""
    if not np.isfinite(values).all():
        raise ValueError("a picture with a grey that is no number")
    high = float(values.max())
    whole = 65535.0 if values.dtype.kind in "ui" and high > 255.0 else max(high, 1e-30)
    scaled = np.empty(values.shape, np.uint8)
    for rows in range(0, len(values), _ROWS):
        part = values[rows : rows + _ROWS].astype(np.float32) * (255.0 / whole)
        scaled[rows : rows + _ROWS] = np.clip(part + 0.5, 0.0, 255.0)
    return scaled
