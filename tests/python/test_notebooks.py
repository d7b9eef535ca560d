"""Every notebook runs to its end, its own assertions included, and is stored without outputs."""

import ast
from collections.abc import Iterator
from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient
from nbformat.v4 import new_code_cell, new_notebook

import backspring as bs

NOTEBOOKS = sorted((Path(__file__).parents[2] / "notebooks").glob("*.ipynb"))


@pytest.fixture(scope="module")
def kernel() -> Iterator[NotebookClient]:
    """One for all of them: its start takes longer than most notebooks."""
    where = {"metadata": {"path": NOTEBOOKS[0].parent}}
    client = NotebookClient(new_notebook(), timeout=300, resources=where)
    with client.setup_kernel():
        yield client


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_runs(path: Path, kernel: NotebookClient) -> None:
    notebook = nbformat.read(path, as_version=4)
    code = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert not any(cell.outputs or cell.execution_count for cell in code)
    assert any("assert " in cell.source for cell in code)
    # Nothing that another notebook has named is left.
    kernel.nb = notebook
    notebook.cells.insert(0, new_code_cell("%reset -f"))
    kernel.reset_execution_trackers()
    for place, cell in enumerate(notebook.cells):
        kernel.execute_cell(cell, place)
    assert all(cell.execution_count for cell in code)


def test_there_are_notebooks() -> None:
    assert NOTEBOOKS


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_uses_public_names_alone(path: Path) -> None:
    cells = nbformat.read(path, as_version=4).cells
    for cell in cells:
        if cell.cell_type != "code":
            continue
        for node in ast.walk(ast.parse(cell.source)):
            if isinstance(node, ast.ImportFrom):
                assert not str(node.module).startswith("backspring")
            if isinstance(node, ast.Import):
                ours = [each.name for each in node.names if each.name.startswith("backspring")]
                assert ours in ([], ["backspring"])
            if isinstance(node, ast.Attribute):
                assert not node.attr.startswith("_")
                of_package = isinstance(node.value, ast.Name) and node.value.id == "bs"
                assert not of_package or node.attr in bs.__all__
