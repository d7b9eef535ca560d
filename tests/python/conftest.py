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
