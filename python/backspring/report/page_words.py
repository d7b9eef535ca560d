"""Sentences of a page that hold for every design."""

from __future__ import annotations

CAUTIONS = (
    "A spring under load can leave the bench faster than the eye follows: wear eye protection "
    "whenever one is loaded, pinned or taken out, and keep faces and fingers out of its way.",
    "Guard the grinder, keep sleeves and gloves away from wheel and belt, and keep the dust out of "
    "your lungs.",
    "Steel from the grinder, the forge or the oven is hot long after it stops glowing: tongs, and "
    "no oil near an open flame. Heat treatment follows the steel maker's data sheet or a qualified "
    "shop.",
    "Tape a sharp edge before working near it, and keep fingers out of the blade's way: it shuts "
    "by itself.",
    "A computed margin does not replace a test: try one spring, look for a set, then cycle it.",
    "What knife may be made, carried or sold is a matter of local law; work that needs a licence "
    "or a qualified person stays with them.",
)
PURPOSE = (
    "It tells what the spring of one slip-joint folding knife does by calculation: how hard the "
    "blade pulls and snaps, what the dial reads, how near the spring is to taking a set, and what "
    "grinding moves.",
    "It is for the bench and for whoever looks over the work: every number that went in stands "
    "under Data, every number that was assumed under Assumptions, and where facts come from under "
    "Sources.",
    "It is no drawing to be made without a trial, and no proof that a knife is safe: see Cautions.",
)
