"""The words of a squash test: what is soft enough gives way between fingers or under a fork."""

from __future__ import annotations

import re

SQUASH = re.compile(
    r"(?:squash|squish|crush|mash|smush|squeeze|press|flatten|collapse|break|fall|give)\w*\b[^.;]{0,50}?"
    r"\b(?:between|finger|fingers|thumb|tongue|roof of (?:the|your) mouth|gums|(?:with|under) (?:a |the (?:back"
    r"|side) of a )?(?:fork|spoon)|against the)"
    r"|\b(?:squash|crush|mash)(?:es|ed)? (?:easily|flat|with no effort|without effort)|\bsquash test"
    r"|\bsquish(?:es|y)? (?:easily|between)"
    r"|\b(?:break|crush|squash|flatten|give)(?:s|es)?(?: up| apart| way)?(?: easily)? (?:when|if|as)"
    r"(?: it is| they are| you)? (?:gently )?(?:press|pinch|squeeze|poke)d?(?:ed)?\b"
    r"|\b(?:pull|come|fall)s? apart\b|\bfalling apart\b|\bcollapses?\b",
    re.I,
)
