"""What a notice says on a design, a check, a plan or a study, by its code."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

Facts = Any  # numbers and names by attribute, see sentences.py
Sentence = str | Callable[[Facts], str]

MISSING = {
    "possible": "a result is impossible",
    "load": "the spring bears nothing on the way",
    "tensile": "a life needs the steel's tensile strength: give spring.tensile or a hardness",
    "nail-nick": "a pull needs the place it acts at: give blade.nail_nick",
    "edge": "a gap under the edge needs blade.edge or blade.edge_clearance, and the blade's length "
    "and mass or inertia",
    "rest": "the blade does not stay closed and open",
}
_LOOSE = "the blade lies loose"
_OF_A_BLADE: dict[str, Sentence] = {
    "not-held-open": "open: the spring bears ahead of the pivot and would close the blade; move "
    "the rear corner back or lengthen the open face to the rear",
    "not-held-closed": "closed: the blade finds no rest near 0 deg; the spring would throw it open",
    "no-half-stop-rest": "half-stop: the blade finds no rest near 90 deg; its face does not hold "
    "it",
    "further-rest": "a flat of the tang's outline, {distance:length} from the pivot, holds the "
    "blade at {angle:angle} too: pulls are told from rest to rest as if it were not there",
    "lifted-off": lambda facts: _lifted_off(facts),
    "other-loose": lambda facts: _other_loose(facts),
    "other-no-rest": "another blade does not stay where it should meanwhile: the spring would turn "
    "it on its pivot, so take the numbers of these cases as a guess",
    "kick-off-pad": "kick: its nose stands at station {nose:length}, off the pad, and does not "
    "meet the spring",
    "yields": "the outer fibre yields on the way: expect the spring to take a set",
    "may-yield": "at the low end of what this steel may carry the outer fibre yields",
    "steep": "the spring or the tang's face slopes {slope:margin} where they meet: above "
    "{small:margin} the small-slope model loses accuracy (error of order slope squared)",
    "stop-unknown": lambda facts: _stop_unknown(facts),
    "target-unknown": lambda facts: _target_unknown(facts),
    "kink-not-judged": lambda facts: _kink(facts),
    "soft-skin": "a skin {depth:length} deep has lost its carbon: at station {station:length} "
    "sound steel begins where the stress is {under:stress} (yield margin {yield_margin:margin}); "
    "if the skin bore nothing, {strength_lost:percent} of the strength and "
    "{stiffness_lost:percent} of the stiffness there would be gone; fatigue counts with "
    "{fatigue_share:percent} of the endurance limit, for cracks start in it early",
    "out-of-bounds": "{results}: no design of this size can have what comes out, so the model does "
    "not cover it and no such number is given",
}


def _of_blade(sentence: Sentence) -> Callable[[Facts], str]:
    """Write a notice of a blade; where it is one of several, with its name and the cases."""

    def written(facts: Facts) -> str:
        text = sentence.format_map(facts) if isinstance(sentence, str) else sentence(facts)
        return f"{facts.blade}{_cases(facts)}: {text}" if "blade" in facts else text

    return written


def _lifted_off(facts: Facts) -> str:
    place = facts.position.replace("_", "-")
    if "prouder" in facts:
        return (
            f"{place}: the spring does not reach this tang, for {facts.prouder} beside it stands "
            f"prouder and holds the spring up; {_LOOSE}"
        )
    return f"{place}: the tang does not touch the spring; {_LOOSE}"


def _other_loose(facts: Facts) -> str:
    if "beside_it" in facts:
        return (
            f"as it turns, the prouder of it and {facts.other} beside it holds the spring up; "
            f"{facts.other} is loose on the way"
        )
    return f"turning it takes the spring off {facts.other}, which is loose then"


def _kink(facts: Facts) -> str:
    """Write what a root radius that is not stated would mean."""
    places = [place for place in range(3) if f"radius_{place}" in facts]
    what = "fatigue" if "fatigue_margin_0" in facts else "yield"

    def row(name: str, kind: str) -> str:
        *first, last = (facts[f"{name}_{place}"] for place in places)
        texts = [format(each, f"{kind}#") for each in first]
        return " or ".join((", ".join(texts), format(last, kind))) if texts else format(last, kind)

    return (
        f"kink_radius is not given, so the belly's {facts.notch} at {facts.station:length} is not "
        f"judged: a root radius of {row('radius', 'length')} would make {facts.nominal:stress} "
        f"there {row('stress', 'stress')} (margin in {what} {row(f'{what}_margin', 'margin')})"
    )


def _cases(facts: Facts) -> str:
    """Name the cases in which it holds, as ", pen open": "pen:open+sheep:closed,..."."""
    if "beside" not in facts:
        return ""
    cases = facts.beside.replace(":", " ").replace("+", " and ").replace(",", ", or ")
    return f", {cases.replace('_', '-')}"


def _stop_unknown(facts: Facts) -> str:
    """Tell what the stop may change, and the test at the bench that settles it."""
    settle = {
        "place": "blue the spring's end, open the blade with both pins in, see where the stop "
        "bears and give fit.stop",
        "face": "measure from the pivot to the stop's face and give fit.stop_face; oil the end",
    }[facts.missing]
    return (
        f"every loaded reading can be {facts.low:reading} to {facts.high:reading} off, by how the "
        f"stop bears on the spring's end: more than the target of {facts.target:reading}; {settle}"
    )


def _target_unknown(facts: Facts) -> str:
    why = MISSING[facts.missing]
    return f"targets.{facts.target}: cannot be judged and counts as missed; {why}"


def _target_lost(facts: Facts) -> str:
    return f"the target for {facts.target.replace('_', ' ')} is met now, not when ground"


def _why_open(facts: Facts) -> str:
    if "for" in facts:
        return "to give the tip room the open face is lowered"
    return "a reading is low: only the open face can be lowered"


def _lowers_open(facts: Facts) -> str:
    text = (
        f"{_why_open(facts)}, by {facts.off:reading} in all; "
        f"preload falls from {facts.preload_before:reading} to {facts.preload_after:reading}"
    )
    if "pull_change" in facts:
        way = "falls" if facts.pull_change.value < 0.0 else "rises"
        text += f", pull {way} by {abs(facts.pull_change):change}"
    if "tip" in facts:
        side = "deeper" if facts.tip.value < 0.0 else "higher"
        text += f", the tip ends {abs(facts.tip):reading} {side}"
    return text + "; the blade then opens a little further, and the pad must lie flat on it again"


def _moves_tip(facts: Facts) -> str:
    way = "lifts the tip out of" if facts.tip.value > 0.0 else "sinks the tip into"
    text = f"this plan {way} the handle by {abs(facts.tip):length}"
    because = facts.because if "because" in facts else ""
    if because == "asked":
        return text
    text += f", more than the {facts.allowance:length} allowed"
    if "level_closed" in facts:
        text += (
            f"; to keep it where it is take {facts.level_closed:reading} off the closed face and "
            f"{facts.level_kick:reading} off the kick instead: --tip level"
        )
    if because == "no-kick":
        text += "; without a kick nothing but the closed face sets it"
    return text


def _tip_runs_out(facts: Facts) -> str:
    face = facts.face.replace("_", "-")
    name = face if face == "kick" else f"{face} face"
    return (
        f"the tip cannot move by {facts.wanted:length} with the readings met: nothing more can "
        f"come off or go on the {name}; it moves by {facts.tip:length}, the nearest. Ground lower, "
        "the open face gives room, at the cost of preload: say with --material open how much of it "
        "may go"
    )


def _not_judged(facts: Facts) -> str:
    return f"{facts.key} {'are' if ',' in facts.key else 'is'} not judged{facts.why}"


def _temper_not_used(facts: Facts) -> str:
    would = (
        f"the temper would give {facts.would_give:hardness}"
        if "would_give" in facts
        else f"of the temper nothing is known: {facts.why}"
    )
    return f"the hardness of {facts.hardness:hardness} is used; {would}"


NOTICES: dict[str, Sentence] = {
    "twist": "side by side the tangs load the spring off its middle line: it twists by "
    "{angle:angle} at the pivot, {across:reading} across its width, at a blade angle of "
    "{blade_angle:angle} (a torque of {torque:torque}); readings hold for the middle of the back",
    **{code: _of_blade(sentence) for code, sentence in _OF_A_BLADE.items()},
    "target-missed": _target_lost,
    "fit-done": "nothing to grind: both readings are as wanted",
    "lowers-open": _lowers_open,
    "moves-tip": _moves_tip,
    "tip-runs-out": _tip_runs_out,
    "tip-follows": "no kick sets the tip apart from the readings: it moves by {tip:length}, wanted "
    "were {wanted:length}",
    "read-again": "{names} read low, {reading:reading}: only the open face mends that, and nothing "
    "puts it back: set the dial at open, read again and log it; a slip comes off with --undo",
    "left-standing": "a little is left on the {names}: less than {least:reading} no hand takes "
    "off and no dial tells, and proud is right rather than low",
    "short-of-target": "the lowest reading, {reading:reading}, is proud but short of the target; "
    "only the open face could raise it, and is left unless --material open says how much may go",
    "no-finer": "readings are good to +-{repeatability:reading}: nothing is planned finer than "
    "that, so measure again after every pass",
    "slightly-low": "a reading is below the target by less than can be read or matters: leave it",
    "scatter": "readings scatter by {scatter:reading}, stated was {stated:reading}: a worn bushing "
    "shows so, or a dial that is not held; nothing is planned finer than that",
    "rough-depths": "the readings belie the depths stated by more than {stated:percent}: these "
    "count as aimed at, good to {share:percent}; a depth that was not measured need not be given",
    "loaded-off": "with both pins in it reads {off:reading} {way} than the rest of the log "
    "foretells, and stop and liners seldom make more than {usual:reading}: it is planned by the "
    "reading as it is; what fits worst is {worst}: was a reading or a face not as "
    "logged, or a trip forgotten?",
    "by-reading": "{reading} lies {off} standard deviations from what all that is logged tells, "
    "{estimate:reading}: it is planned by the reading as it is; what fits worst is {worst}",
    "few-logs": "the shop's habits rest on {count:count} logs and need {least:count}: until then "
    "common practice is expected of a knife",
    "logs-left-out": "files of the habits' folder that count for nothing: {count:count}; "
    "`backspring habits FOLDER` says why",
    "dry-joint": "the pulls tell of friction {friction:margin}, far from the usual {usual:margin}: "
    "if it is dry or galled, take these pulls off the log, clean and oil the joint, pull again",
    "worn-dial": "readings go astray both ways by more than the {stated:reading} stated: they are "
    "taken as good to +-{scatter:reading}; worst fits {worst}; set the dial at open and read twice",
    "measure-loaded": "from these readings the loaded ones are good to +-{spread:reading} only, "
    "for tilt, play, stop and liners are not known: the plan stops short by twice that; measure "
    "with both pins in before the last pass",
    "zero-unseen": "nothing in this log would show that the dial's zero moved by {moved:reading}: "
    "before you grind, see that it stands at nothing at open",
    "no-friction": "no friction is counted: the real pull to open is higher",
    "hardness-outside": "{hardness:hardness} lies outside the {low:hardness#} to {high:hardness} "
    "of the data of {steel}: take the yield margin as a guess",
    "other-steel": "[steel], {own}, is not used: spring.steel names {steel}",
    "hollow-bridged": "tang.outline: a hollow {depth:length} deep at [{ahead:length#}, "
    "{outward:length}] is bridged: the spring does not reach into it",
    "not-used": "{key} is not used: the support is not by two pins",
    "not-judged": _not_judged,
    "temper-not-used": _temper_not_used,
    "knife-tolerances": "what the log tells of this knife is spread as surely as it tells it, and "
    "together; the rest as on an ordinary bench",
    "ordinary-tolerances": "no tolerances stated: those of an ordinary bench are taken (common "
    "practice, no source), with what is not known of friction, Young's modulus and hardness",
    "usual-friction": "no friction is stated: {friction:margin} is counted, and its spread",
    "stopped": "stopped: {rows:count} of {wanted:count} knives were worked out",
    "not-working": "{broken:count} of {rows:count} knives do not work as a slip joint, or cannot "
    "be made so",
}
