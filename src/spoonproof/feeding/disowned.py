"""Whether the next words disown what somebody is told to have done: "Gran hands him a rusk, I've asked her to stop".

A tale of what others do warns as often as it recommends; what its teller says of it next tells which.
"""

from __future__ import annotations

import re

_REFUSED = re.compile(
    r"\b(?:says?|said|told (?:me|us|her|him|them)|warned (?:me|us|her|him|them)|(?:asked|begged) (?:her|him|them))"
    r" (?:not to|never|no|not|against|to stop(?! by\b| at\b| for\b)|otherwise)\b"
    r"|\bglad (?:i|we) (?:never|did ?n['’]t|did not)\b|\b(?:please|but|so) (?:don['’]t|do not|never)\b"
    r"|\b(?:i|we) (?:never|didn['’]t|did not|don['’]t|wouldn['’]t|won['’]t)"
    r"(?= (?:do|did|allow|follow|listen|us|giv|gave|put|let|took|take|go|risk|tr[yi]|want|dream|agree|hold|advise"
    r"|recommend|offer|add|serv|hav)\w*|\W*(?:$|[.;!,]))"
    r"|\b(?:i|we) (?:refused|ignored|said no|stopped)\b"
    r"|\b(?:it is|it['’]s|that is|that['’]s|that was|it was)"
    r" (?:wrong|a myth|not (?:safe|right|true|a thing)|dangerous|out of date|old)\b"
    r"|\bnot (?:done|advised|recommended|a thing|the advice)\b|\bno longer\b|\b(?:not )?any ?more\b"
    r"|\bnowadays\b|\bthese days\b|\bnever again\b|\bhave stopped\b|\bknow better\b"
    r"|\bnow (?:i|we|he|she) (?:never|no|only|know|wait|chill|check|keep|cut|quarter|mash|sits?|use"
    r"|(?:do|will|would) not|\w+n['’]t)\b"
    r"|\blearn(?:ed|t) (?:my|our|the) lesson\b|\b(?:had|having) (?:\w+ ){0,2}(?:words|a row|it out)\b"
    r"|\bput (?:a stop to|my foot down|her right|him right|them right)|\b(?:it|this|that) (?:has|had) to stop\b"
    r"|\bi (?:drew|draw) the line\b|\bi (?:took|take|taken) (?:it|them) (?:away|off|out)\b"
    r"|\b(?:banned|forbidden) (?:it|them)\b|\bi (?:have |had |['’]ve )?(?:hidden|hid) (?:it|them|the)\b"
    r"|\b(?:has|have) agreed (?:to (?:it|stop|that)|not to|it)\b|\b(?:horrified|furious|my heart stopped)\b",
    re.I,
)
_FIRMLY = re.compile(
    r"\b(?:i|we) (?:do not|don['’]t|never|would ?n['’]t|won['’]t|wouldn['’]t dream of) "
    r"(?:do|doing|risk|allow|recommend|hold with|advise|go along)\b"
    r"|\b(?:i|we) (?:said no|refused|did not|didn['’]t)(?=\W*(?:$|[.;!]))|\bnot in (?:my|our|this) (?:house|kitchen)\b",
    re.I,
)
"""What refuses it whoever did it: "she left hers on the stove. I love her and I don't do it"."""
_SOMEBODY = re.compile(
    r"\b(?:told|advised|said|says|urged|nagged|swears?|swore|wanted|suggested|reckons?|reckoned|asked|used to|always)\b"
    r"|\b(?:(?:step|grand|god)?(?:mums?|mother|dad|father|parents?)|mom|mam|ma|nan|nana|gran|granny"
    r"|grandma|grandad|grandpa|aunt|auntie|uncle|nani|dadi"
    r"|sister|brother|cousin|husband|wife|partner|neighbour|friend|childminder|in[- ]laws?)\b",
    re.I,
)
_BEHIND = 140
"""Characters after what is told within which its teller disowns it."""
_BEHIND_ALONE = 100


def disowned(text: str, start: int, place: tuple[int, int]) -> bool:
    """Whether what ``text`` tells at ``place``, in a clause from ``start`` on, is refused by the words that follow."""
    if _FIRMLY.search(text, place[1], place[1] + _BEHIND_ALONE):
        return True
    told = _SOMEBODY.search(text, start, place[0]) is not None
    return told and _REFUSED.search(text, place[1], place[1] + _BEHIND) is not None
