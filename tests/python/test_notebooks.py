"""Every notebook runs to its end, its own assertions included, and is stored without outputs."""

import ast
from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient

import backspring as bs

NOTEBOOKS = sorted((Path(__file__).parents[2] / "notebooks").glob("*.ipynb"))


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_runs(path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    code = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert not any(cell.outputs or cell.execution_count for cell in code)
    assert any("assert " in cell.source for cell in code)
    NotebookClient(notebook, timeout=300, resources={"metadata": {"path": path.parent}}).execute()


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
