"""The words of a squash test: what is soft enough gives way between fingers or under a fork."""

from __future__ import annotations

import re

SQUASH = re.compile(
    r"(?:squash|squish|crush|mash|smush|squeeze|press|flatten|collapse|break|fall|give)\w*\b[^.;]{0,50}?\b(?:between"
    r"|finger|fingers|thumb|tongue|roof of (?:the|your) mouth|gums|(?:with|under) (?:a |the (?:back"
    r"|side) of a )?(?:fork|spoon)|against the)|\b(?:squash|crush|mash)(?:es|ed)? (?:easily|flat|with no effort"
    r"|without effort)|\bsquash test|\bsquish(?:es|y)? (?:easily|between)|\b(?:break|crush|squash|flatten|give)(?:s"
    r"|es)?(?: up| apart| way)?(?: easily)? (?:when|if|as)(?: it is| they are| you)? (?:gently )?(?:press|pinch"
    r"|squeeze|poke)d?(?:ed)?\b|\b(?:pull|come|fall)s? apart\b|\bfalling apart\b|\bcollapses?\b",
    re.I,
)
