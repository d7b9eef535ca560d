"""Codes of diagnostics: how much each weighs, and what it says in one line.

A note is good to know, a warning puts the answer or the knife in doubt, an error is no answer.
"""

from __future__ import annotations

from typing import Literal

from backspring.report.tables import Report, TextTable

Severity = Literal["note", "warning", "error"]

_NOTES = {
    "by-reading": "a reading lies far from what the log tells, and is planned by as it is",
    "few-logs": "too few logs for habits of a shop: common practice is expected",
    "fit-done": "nothing to grind, both readings are as wanted",
    "hollow-bridged": "a hollow of the tang's outline, which the spring does not reach",
    "knife-tolerances": "what the log tells is spread as surely as it tells it",
    "logs-left-out": "files of the habits' folder that count for nothing",
    "left-standing": "what is too little to grind is left on a face",
    "lowers-open": "the plan lowers the open face, and with it preload and pull",
    "no-finer": "nothing is planned finer than readings are good to",
    "no-friction": "no friction is counted, the real pull is higher",
    "not-judged": "a key that cannot be judged, and why",
    "not-used": "a key that this design does not use",
    "ordinary-tolerances": "no tolerances stated, an ordinary bench's are taken",
    "other-steel": "a [steel] table beside a spring of another steel",
    "short-of-target": "a reading is proud but short of the target, the open face is left",
    "slightly-low": "a reading is low by less than matters",
    "temper-not-used": "a temper beside a hardness: the hardness is used",
    "temper-time": "a time of the temper that the data cannot count",
    "tip-follows": "without a kick the tip follows the readings",
    "usual-friction": "no friction is stated, the usual one is counted",
    "zero-unseen": "the log would not show that the dial's zero moved",
}
_WARNINGS = {
    "dry-joint": "pulls tell of more or less friction than usual",
    "embrittlement": "a temper at which the steel turns brittle",
    "extrapolated-in-time": "a time beyond those that were fitted",
    "further-rest": "the tang's outline holds the blade at a further angle",
    "hardness-outside": "a hardness outside the steel's data: the margin is a guess",
    "kick-off-pad": "the kick's nose stands off the pad",
    "lifted-off": "the tang does not touch the spring, the blade lies loose",
    "kink-not-judged": "a kink of the belly is not judged without its root radius",
    "loaded-off": "pins in, it reads otherwise than the log foretells",
    "may-yield": "it yields at the low end of the steel's strength",
    "measure-loaded": "loaded readings are not known well: measure with the pins in",
    "moves-tip": "the plan moves the blade's tip more than allowed",
    "no-half-stop-rest": "the blade does not rest at the half-stop",
    "not-held-closed": "the blade does not stay closed",
    "not-held-open": "the blade does not stay open",
    "not-working": "some of the knives drawn do not work",
    "other-loose": "turning one blade leaves another loose",
    "other-no-rest": "another blade would be turned meanwhile: a guess",
    "out-of-bounds": "a result that no design of this size can have, left out",
    "read-again": "a low reading was read once only: nothing is planned before it is read again",
    "rough-depths": "readings belie the depths stated, these count for less",
    "scatter": "readings differ more than stated",
    "soft-skin": "what a skin without carbon takes from the spring",
    "steep": "slopes too steep for the small-slope model",
    "stop-unknown": "how the stop bears changes readings by more than their target",
    "stopped": "stopped before all knives were worked out",
    "target-missed": "a target is met now and not when ground",
    "target-unknown": "a target that cannot be judged, and counts as missed",
    "tip-runs-out": "the tip cannot move as wanted with the readings met",
    "twist": "tangs side by side twist the spring",
    "worn-dial": "readings scatter more than stated, by what the log tells",
    "yields": "the outer fibre yields, the spring takes a set",
}
_ERRORS = {
    "bad-log": "a line of a knife's log that cannot be read",
    "bad-outline": "a drawing that cannot be taken for the parts of a joint",
    "bad-toml": "a design file that is not TOML",
    "bad-value": "a value of the wrong kind, outside its range, or against a rule",
    "cannot-write": "a file that cannot be written",
    "empty-section": "a page with nothing to say in a section",
    "in-use": "a file that another program holds",
    "missing-key": "a key or section that must be given",
    "missing-package": "a Python package that has to be installed first",
    "no-solution": "a search that ended without a solution",
    "not-finite": "a number of the answer that is none or has no end, which JSON cannot say",
    "no-tests": "no tests of a clone where they are looked for",
    "unknown-blade": "no blade of this name",
    "unknown-key": "no key of this name",
    "unknown-name": "no such name, steel, command or code",
    "unreadable": "a file that cannot be opened or is no text",
    "usage": "a command line that cannot be understood or would change nothing",
    "wrong-format": "a design file of another format",
}
# What a search without a solution, a size or a temper names as being in the way; not of JSON.
_REASONS = {
    "breaks-rule": "a rule of the design stands in the way of a size",
    "does-not-stay": "no size at which the blade stays in its positions",
    "face-runs-out": "a face has not the steel that a plan needs",
    "flush-breaks-rule": "grinding flush breaks a rule of the design",
    "flush-passes": "not flush after the most passes",
    "greatest-size": "a size must be at most so much",
    "grind-lets-go": "the blade no longer snaps before the pull is reached",
    "grind-limit": "grinding ends before the pull is reached",
    "grind-too-weak": "the spring pulls less than wanted, grinding lowers it more",
    "hardness-after-hold": "a hardness that no temper of this time leaves",
    "hardness-range": "a hardness outside the temper data",
    "later-above-temper": "a later heat above the temper, which a table cannot tell",
    "later-heat-hottest": "a later heat hotter than the data",
    "later-heat-range": "a later heat outside the data",
    "later-time-longest": "a later time longer than the data",
    "later-too-soft": "softer after a heat than the data go",
    "least-size": "a size must be at least so much",
    "margin-at-limit": "a margin must be at least so much",
    "margin-out-of-reach": "a margin that cannot be had between the bounds",
    "no-such-tang": "no tang of this design has such readings",
    "no-taper": "no taper gives the pull",
    "none-works": "no design between the bounds works",
    "pull-turns-back": "the pull turns back before it is reached",
    "stock-sizes": "no stock size fits, and which is nearest",
    "temper-hold": "a time of temper far from the table's own",
    "temper-range": "a temper outside the data",
    "temper-time-range": "a time of temper outside the data",
}
_BY_SEVERITY: dict[Severity, dict[str, str]] = {
    "note": _NOTES,
    "warning": _WARNINGS,
    "error": _ERRORS | _REASONS,
}
CODES: dict[str, tuple[Severity, str]] = {
    code: (severity, meaning)
    for severity, codes in _BY_SEVERITY.items()
    for code, meaning in codes.items()
}
_HEAD = """# Codes of diagnostics

Written by `backspring codes --reference`; do not edit. A code is fixed, its sentence may change. A
note is good to know, a warning puts the answer or the knife in doubt, an error is no answer.

| code | severity | meaning |
|---|---|---|
"""


def severity_of(code: str) -> Severity:
    """Return how much a diagnostic weighs."""
    return CODES[code][0]


def codes_data() -> list[dict[str, str]]:
    """Every code as plain data."""
    return [
        {"code": code, "severity": severity, "meaning": meaning}
        for code, (severity, meaning) in CODES.items()
    ]


def codes_report() -> Report:
    """Every code as a table."""
    rows = tuple((code, severity, meaning) for code, (severity, meaning) in CODES.items())
    return Report("Codes of diagnostics", (TextTable("", ("code", "severity", "meaning"), rows),))


def codes_reference() -> str:
    """Every code as Markdown."""
    rows = [f"| `{code}` | {severity} | {meaning} |" for code, (severity, meaning) in CODES.items()]
    return _HEAD + "\n".join(rows) + "\n"
