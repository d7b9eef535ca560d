"""What tests share."""

from __future__ import annotations

import functools
import json
import signal
from collections.abc import Iterator
from typing import Any

import jsonschema
import pytest

from backspring.cli import answer
from backspring.document.schemas import document_schema


@functools.cache
def _validator(command: str) -> Any:
    return jsonschema.Draft202012Validator(document_schema(command))


def require_shape(text: str) -> None:
    """Hold a command's JSON document against its schema."""
    document = json.loads(text)
    # What is no command at all has no schema; its document is that of any refusal.
    command = document["command"] if document["status"] != "error" else "check"
    wrong = jsonschema.exceptions.best_match(
        _validator(command).iter_errors(document | {"command": command})
    )
    assert wrong is None, f"{command}: {wrong.json_path}: {wrong.message}"


@pytest.fixture(autouse=True, scope="session")
def every_document_has_its_shape() -> Iterator[None]:
    """Hold every JSON document that a command of any test writes against its schema."""
    written = answer._document

    def held(*given: Any) -> str:
        text = written(*given)
        require_shape(text)
        return text

    answer._document = held
    yield
    answer._document = written


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
