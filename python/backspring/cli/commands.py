"""The commands: what each is called, where it stands, and one line of help."""

from __future__ import annotations

# Name, module and one line of help: a module is loaded only when its command is asked for.
COMMANDS = {
    "advise": ("backspring.cli.advise", "what to change so that a design meets its targets"),
    "bushing": ("backspring.cli.bushing", "what a round bushing would read, from four quarters"),
    "card": ("backspring.cli.card", "a page for the bench: outlines, readings, passes to tick"),
    "check": ("backspring.cli.check", "rests, strokes, stress, margins and readings of a design"),
    "codes": ("backspring.cli.codes", "codes of diagnostics with their severity"),
    "compare": ("backspring.cli.compare", "what changes between two designs, and by what"),
    "completion": ("backspring.cli.completion", "a script that lets a shell complete all this"),
    "evidence": ("backspring.cli.evidence", "what we say beside published and other figures"),
    "fit": ("backspring.cli.fit", "what to leave unloaded, and what to take off which face"),
    "functions": ("backspring.cli.functions", "names of the Python package, each described"),
    "grind": ("backspring.cli.grind", "pull, stress, margin and readings against steel taken off"),
    "habits": (
        "backspring.cli.habits",
        "what the knives of a shop have in common",
    ),
    "keys": ("backspring.cli.keys", "keys of the design file: unit, range, default and meaning"),
    "layout": ("backspring.cli.layout", "a whole design file for a new joint"),
    "load": ("backspring.cli.load", "what it takes to get the spring over the tang"),
    "new": ("backspring.cli.new", "a commented design file to start from"),
    "outline": ("backspring.cli.outline", "a design file out of a drawing of its parts"),
    "plot": ("backspring.cli.plot", "pictures of a design to a PNG or SVG file"),
    "report": ("backspring.cli.report", "a design on one HTML page, to print or to hand on"),
    "schema": ("backspring.cli.schema", "shape of what a command prints with --json"),
    "size": ("backspring.cli.size", "sizes for a wanted pull and margin, or a taper"),
    "steels": ("backspring.cli.steels", "steels with their sources, and what a temper leaves"),
    "template": ("backspring.cli.template", "spring, tang and liner holes at true size, to cut by"),
    "tolerance": (
        "backspring.cli.tolerance",
        "spread of pull, stress and readings for stated tolerances",
    ),
}
