"""What tests share."""

from __future__ import annotations

import signal
from collections.abc import Iterator

import pytest


@pytest.fixture
def interruptible() -> Iterator[None]:
    """Heed Ctrl-C; a shell starts its background jobs with it ignored."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


@pytest.fixture
def undrawn(monkeypatch: pytest.MonkeyPatch) -> None:
    """Make pages without their drawings, which take nearly all of the time."""
    from backspring.report.page_parts import Drawing

    for module in ("page_blade", "page_results"):
        name = f"backspring.report.{module}.drawing"
        monkeypatch.setattr(name, lambda *_, **__: Drawing("A drawing", "<svg></svg>"))
