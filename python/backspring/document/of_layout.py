"""Shapes of design files that were made."""

from __future__ import annotations

from backspring.document.common import DESIGN
from backspring.document.shapes import TEXT, table

NEW = [table("pull_n? yield_margin?", design=DESIGN, text=TEXT, left_out={"output": TEXT})]
