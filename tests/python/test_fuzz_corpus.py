"""What the fuzzer of the front found, and a little of what it went through, on every run."""

from __future__ import annotations

import importlib.util
import logging
from pathlib import Path
from types import ModuleType

import pytest

PATH = Path(__file__).resolve().parents[1] / "fuzz" / "front_targets.py"


def _targets() -> ModuleType:
    spec = importlib.util.spec_from_file_location("front_targets", PATH)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


TARGETS = _targets()


@pytest.mark.parametrize("name", TARGETS.TARGETS)
def test_every_kept_input_is_answered_or_refused(
    name: str, caplog: pytest.LogCaptureFixture
) -> None:
    # The library for drawings tells of every line that it mends.
    caplog.set_level(logging.CRITICAL)
    kept = [*TARGETS.replay(name)]
    assert kept
    for input_name, run in kept:
        try:
            run()
        except Exception as error:
            pytest.fail(f"{input_name}: {error!r}")
