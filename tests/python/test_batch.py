"""Many designs: every row is what a check of that design says."""

from __future__ import annotations

import copy
import pickle
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core

REPO = Path(__file__).resolve().parents[2]
HERON = bs.load(REPO / "data" / "designs" / "heron.toml")
KESTREL = bs.load(REPO / "data" / "designs" / "kestrel.toml")
WREN = bs.load(REPO / "data" / "designs" / "wren.toml")
# Each key of a design file that holds one number.
FILE_KEYS = [
    each.key
    for each in _core.dimensions()
    if not each.key.startswith("spring.thickness") and not each.key.startswith("tang.kick")
]


@pytest.mark.parametrize("key", FILE_KEYS)
@pytest.mark.parametrize("design", [HERON, KESTREL, WREN], ids=lambda design: design.name)
def test_a_key_means_what_it_means_in_the_file(design: bs.Design, key: str) -> None:
    nominal = _core.dimension_value(design.core, key)
    if nominal is None:
        with pytest.raises(bs.InvalidInput, match="none to change"):
            bs.check_many(design, {key: [1.0]})
        return
    values = [0.995 * nominal, 1.005 * nominal]
    many = bs.check_many(design, {key: values})
    for row, value in enumerate(values):
        check = bs.check(design.replace(**{key: value}))
        assert many["status"][row] == "ok"
        assert many["travel_peak_stress_mpa"][row] == pytest.approx(
            check.travel.peak_stress_mpa, rel=1e-6
        )
        assert many["yield_margin"][row] == pytest.approx(check.travel.yield_margin, rel=1e-6)
        assert many["reading_loaded_closed_mm"][row] == pytest.approx(
            check.positions["closed"].reading_loaded_mm, abs=1e-6
        )
        pulls = [stroke.peak_pull_n for stroke in check.strokes]
        assert many["peak_pull_n"][row] == pytest.approx(max(pulls), rel=1e-6)


def test_what_a_file_leaves_to_follow_follows() -> None:
    content = HERON.to_dict()
    del content["fit"]["dial"]
    content["fit"] = {"rear_pin_offset": 0.9}
    design = bs.Design(**content)
    pivots, rears = [31.5, 32.5], [33.0, 35.0]
    many = bs.check_many(design, {"tang.pivot": pivots, "spring.rear_pin": rears})
    for row in range(2):
        changed = design.replace(**{"tang.pivot": pivots[row], "spring.rear_pin": rears[row]})
        closed = bs.check(changed).positions["closed"]
        assert many["force_closed_n"][row] == pytest.approx(closed.force_n, rel=1e-6)
        assert many["reading_loaded_closed_mm"][row] == pytest.approx(
            closed.reading_loaded_mm, abs=1e-6
        )
    assert list(many.inputs) == ["tang.pivot", "spring.rear_pin"]


def test_texts_and_single_values_are_read() -> None:
    plain = bs.check_many(HERON, {"fit.preload": [0.8, 0.9], "spring.width": 2.54})
    written = bs.check_many(HERON, {"fit.preload": ["0.8 mm", "900 um"], "spring.width": "0.1 in"})
    assert np.array_equal(plain["peak_pull_n"], written["peak_pull_n"])
    assert bs.check_many(HERON, {"spring.width": "0.1 in"}).rows == 1


def test_a_bad_row_has_a_status_and_no_numbers() -> None:
    many = bs.check_many(HERON, {"fit.preload": [-1.0, 0.0, np.nan, 0.9]})
    assert many["status"].tolist() == ["invalid", "lifted_off", "invalid", "ok"]
    assert np.isnan(many["peak_pull_n"]).tolist() == [True, True, True, False]
    assert many.ok.tolist() == [False, False, False, True]
    assert many.counts() == {"ok": 1, "invalid": 2, "lifted_off": 1}
    assert repr(many) == "ManyChecks('Heron', 4 rows: 1 ok, 2 invalid, 1 lifted_off)"


def test_few_results_are_the_same_as_among_all() -> None:
    changes = {"fit.preload": np.linspace(0.2, 1.2, 7)}
    everything = bs.check_many(HERON, changes)
    few = bs.check_many(HERON, changes, columns=["crest_from_half_stop_deg", "peak_pull_n"])
    assert list(few) == ["status", "crest_from_half_stop_deg", "peak_pull_n"]
    for name in few:
        assert np.array_equal(few[name], everything[name])


def test_a_result_is_pickled_and_copied_whole() -> None:
    many = bs.check_many(HERON, {"fit.preload": [0.5, -1.0]})
    for again in (pickle.loads(pickle.dumps(many)), copy.deepcopy(many)):
        assert again.design == HERON
        assert again.complete
        for name in many:
            # Two NaN are equal here.
            np.testing.assert_array_equal(again[name], many[name])


@pytest.mark.parametrize(
    ("changes", "options", "message"),
    [
        ({}, {}, "changes: must name at least one dimension"),
        (
            {"fit.preloads": [1.0]},
            {},
            'fit.preloads: unknown dimension: did you mean "fit.preload"?',
        ),
        ({"tang.kick.height": [1.0]}, {}, "tang.kick.height: the design has none to change"),
        ({"fit.preload": "0.9 N"}, {}, 'fit.preload: must be a length, got "0.9 N", which is a'),
        ({"fit.preload": ["1", "2 x"]}, {}, 'fit.preload: row 1: unknown unit "x" in "2 x"'),
        ({"fit.preload": [[1.0]]}, {}, "fit.preload: must be one row of numbers, got 2 dim"),
        ({"fit.preload": [{}]}, {}, "fit.preload: row 0: must be a length, got a table"),
        ({"fit.preload": None}, {}, "fit.preload: must be a length, got None"),
        (
            {"fit.preload": [1.0, 2.0], "spring.width": [1.0]},
            {},
            "spring.width: must have as many rows as fit.preload, 2, got 1",
        ),
        (
            {"fit.preload": [1.0]},
            {"columns": ["peak_pul_n"]},
            'columns: unknown result "peak_pul_n": did you mean "peak_pull_n"?',
        ),
        ({"fit.preload": [1.0]}, {"columns": []}, "columns: must name at least one result"),
        (
            {"fit.preload": [1.0]},
            {"threads": 0},
            "threads: must be a whole number from 1 to 1024, got 0",
        ),
        (
            {"fit.preload": [1.0]},
            {"chunk_rows": 2.5},
            "chunk_rows: must be a whole number from 1 to 1000000000, got 2.5",
        ),
    ],
)
def test_bad_input_is_told(
    changes: dict[str, object], options: dict[str, object], message: str
) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        bs.check_many(HERON, changes, **options)
    assert str(refused.value).startswith(message)


def test_all_faults_are_told_at_once() -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        bs.check_many(HERON, {"tang.kick.height": [1.0], "spring.width": "2 N"})
    assert [fault.key for fault in refused.value.faults] == ["tang.kick.height", "spring.width"]


def test_no_rows_are_no_error() -> None:
    many = bs.check_many(HERON, {"fit.preload": []})
    assert (many.rows, many.complete, many.counts()) == (0, True, {})


def test_a_table_is_written_whole_with_all_digits(tmp_path: Path) -> None:
    path = tmp_path / "rows.csv"
    many = bs.check_many(HERON, {"fit.preload": [0.9, -1.0]}, columns=["peak_pull_n"])
    many.to_csv(path)
    head, good, bad = path.read_text("utf-8").splitlines()
    assert head == "fit.preload,status,peak_pull_n"
    assert good == f"0.9,ok,{many['peak_pull_n'][0]!r}".replace("np.float64(", "").rstrip(")")
    assert bad == "-1.0,invalid,"
    assert [each.name for each in tmp_path.iterdir()] == ["rows.csv"]


def test_a_table_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    many = bs.check_many(HERON, {"fit.preload": [0.9]})
    with pytest.raises(bs.InvalidInput, match="output: cannot write .*: no such file or dir"):
        many.to_csv(tmp_path / "missing" / "rows.csv")


def test_a_dataset_holds_inputs_and_results() -> None:
    many = bs.check_many(HERON, {"fit.preload": [0.8, 0.9]})
    dataset = many.to_xarray()
    assert dict(dataset.sizes) == {"row": 2}
    assert dataset.coords["fit.preload"].values.tolist() == [0.8, 0.9]
    assert dataset["peak_pull_n"].values.tolist() == many["peak_pull_n"].tolist()
    assert dataset.attrs["design"] == "Heron"


def test_a_dataset_without_its_package_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(__import__("sys").modules, "xarray", None)
    many = bs.check_many(HERON, {"fit.preload": [0.9]})
    with pytest.raises(bs.InvalidInput, match=r'pip install "backspring\[study\]"'):
        many.to_xarray()
