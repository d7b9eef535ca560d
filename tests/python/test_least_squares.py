"""The core's least squares, asked from Python."""

from __future__ import annotations

import pickle
import threading
from typing import Any

import numpy as np
import pytest

from backspring import _core
from backspring.errors import InvalidInput, NoConvergence


def line(x: np.ndarray[Any, np.dtype[np.float64]]) -> Any:
    return np.array([x[0] - 1.0, x[0] + x[1] - 3.0, 2.0 * x[1]])


def test_it_is_numpys_least_squares() -> None:
    matrix, right = np.array([[1.0, 0.0], [1.0, 1.0], [0.0, 2.0]]), np.array([1.0, 3.0, 0.0])
    found = _core.least_squares(line, [_core.Unknown(), _core.Unknown(start=5.0)])
    assert found.x == pytest.approx(np.linalg.lstsq(matrix, right, rcond=None)[0])
    assert found.covariance == pytest.approx(np.linalg.inv(matrix.T @ matrix))
    with_slopes = _core.least_squares(lambda x: (line(x), matrix), [_core.Unknown()] * 2)
    assert with_slopes.x == pytest.approx(found.x)
    assert with_slopes.jacobian == pytest.approx(matrix)
    assert pickle.loads(pickle.dumps(found)).x == pytest.approx(found.x, abs=0.0)


def test_an_error_of_the_model_reaches_the_caller() -> None:
    class Odd(Exception):
        pass

    def fail(_: object) -> Any:
        raise Odd("as it was")

    with pytest.raises(Odd, match="as it was"):
        _core.least_squares(fail, [_core.Unknown()])
    with pytest.raises(NoConvergence, match="no answer at the start"):
        _core.least_squares(lambda _: np.array([np.nan]), [_core.Unknown()])
    with pytest.raises(InvalidInput, match="bounds must rise"):
        _core.least_squares(line, [_core.Unknown(least=1.0, greatest=0.0)])


def test_searches_in_threads_and_within_a_model_do_not_wait_for_ever() -> None:
    inner = _core.least_squares(line, [_core.Unknown()] * 2).x

    def nested(x: np.ndarray[Any, np.dtype[np.float64]]) -> Any:
        return x - _core.least_squares(line, [_core.Unknown()] * 2).x

    answers: list[Any] = []
    threads = [
        threading.Thread(
            target=lambda: answers.append(_core.least_squares(nested, [_core.Unknown()] * 2).x)
        )
        for _ in range(4)
    ]
    for each in threads:
        each.start()
    for each in threads:
        each.join(timeout=60.0)
    assert len(answers) == len(threads)
    for each in answers:
        assert each == pytest.approx(inner)
