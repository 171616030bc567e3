"""What the frame around a clause does to it: takes it back ("it's a myth that ...", "..., but she's wrong"), or lets it
stand though it holds a "no" ("nobody told me that ...", "contrary to popular belief, ...").

This is the one place where it is decided. What is only reported ("my gran swears ...") is left open: it is judged as if
its teller had said it.
"""

from __future__ import annotations

import re

from spoonproof.claims.judging.reading import age_said, runs_of, said_before, said_behind, subjects_of
from spoonproof.claims.judging.said_next import OTHERS_SAY, TAIL
from spoonproof.claims.judging.turns_of_phrase import NOT, STANDS, standing
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim
from spoonproof.model.record import replace

_SAY = r"(?:say|says|said|saying|claim|claims|claimed|claiming|suggesting|pretend|pretends|pretending)"
_TO_SAY = r"(?:say|claim|think|believe|suggest|tell|pretend|assume|insist)"
_SHOWN = r"(?:shown?|shows|proven?|proved|proves|confirmed|demonstrated|established)"
_IDEA = r"(?:idea|claim|notion|theory|belief|view|rule|rumour|saying)"
_UNTRUE = (
    r"(?:myths?|misconceptions?|nonsense|rubbish|a lie|lies|lying|wrong|false|untrue|mistaken|misinformed|incorrect|rot"
    r"|tosh|bunk|twaddle|baloney|bogus|hogwash|(?:old wives'? |fairy )?tales?|fables?|legends?|fiction|folklore"
    r"|superstitions?|invented|wishful thinking|talking (?:rubbish|nonsense)|debunked|disprove[dn]|outdated|out of date"
    r"|an old rule|not (?:true|so|the case|a fact))"
)
_ADVERBS = (
    r"(?:(?:just|simply|such|what|all|a|an|the|total|complete|utter|pure|plain|absolute|sheer|absolutely|totally"
    r"|completely|quite|so|very|load|of|old|really|actually|popular|common) ){0,3}"
)
_IS = r"(?:is|are|was|were|[a-z]+'s|[a-z]+'re|(?:has|have|had) been|turns? out|turned out)(?: to be| that| it)?"

_NOT_A_WORD = (
    r"(?:not (?:a|one) (?:(?:single )?word|bit|scrap|shred|ounce) of (?:it|that|this|which)"
    r"|(?:none|nothing) of (?:it|that|this|which)) (?:is|was|holds|turns out)(?: to be)?"
    r" (?:(?:actually|really|even) )?(?:true|right|so|correct|up)"
)
_MADE_UP = (
    r"(?:it|that|this|they)(?:'s| is|'re| are) (?:(?:all|just|completely|entirely) )?"
    r"(?:made up|invented|fabricated|make believe)(?! (?:of|with|from|in|to|by|fresh|for|at|as) )"
)
_DENIES = re.compile(
    r" (?:"
    r"(?:don't|do not|dont|didn't|did not|doesn't|does not|never|nobody|no one|not to|shouldn't|stop) "
    r"(?:(?:really|personally|honestly|even|ever|actually|for one|used to) )?"
    r"(?:think|thinks|thought|believe|believes|believed|believing|buy|accept|agree)(?: (?:a word|anyone|people))?"
    rf"|{NOT} (?:(?:is|are|was|were|going to|ever|even|actually|here to|really|once|should|ought to) ){{0,2}}{_SAY}"
    r"(?! (?:yes|no|to) )"
    r"|(?:nobody|no one|no (?:mum|parent|doctor)) (?:should|ought to|must) (?:ever )?tell"
    r"|(?:should|must)(?:n't| not| never) (?:ever )?tell"
    r"|(?:not|[a-z]+n't|hardly) as (?:if|though)"
    rf"|(?:i|we|i'm|we're) (?:can't|cannot|can not|won't|will not|wouldn't|not going to|don't|do not|never) "
    r"(?:tell|told|promise|promised)(?! (?:me|us|you (?:how|enough|what a)) )"
    rf"|(?:nobody|no one|nothing|no (?:\w+ ){{1,3}}?)(?:'s)? ?(?:(?:has|have|ever|yet|really|actually) ){{0,3}}"
    rf"(?:{_SHOWN}|suggests?|supports?|found|to show)"
    rf"|{NOT} (?:(?:yet|ever|been|be|really|actually|scientifically) ){{0,3}}{_SHOWN} (?:that|if|whether)"
    r"|(?:never|not|hasn't|haven't) (?:yet |ever )?been (?:shown|proven|proved)"
    rf"|{NOT} (?:\w+ ){{0,2}}?(?:support|supports|back|backs|bear|bears|confirm|confirms)(?: up| out)? (?:that|the "
    rf"(?:\w+ )?{_IDEA})"
    r"|no (?:\w+ ){0,2}?(?:evidence|proof|truth|basis)"
    r"|(?:stop|quit|enough of) (?:people |everyone )?(?:saying|telling|claiming|pretending|insisting|spreading"
    r"|suggesting|repeating|thinking)"
    r"|(?:i|we|to|experts?|doctors?|scientists?|many|some) (?:\w+ly |do |used to |also |still )?doubt(?:s|ed)?"
    r"|(?:not|never|[a-z]+n't) (?:yet |at all |really )?convinced that|(?:i|we) (?:don't|do not) know that"
    r"|(?:nobody|no one) knows (?:that|if|whether)"
    r"|myths?|misconceptions?|fallacy|urban legend|old wives'?(?: tales?)?"
    r"|(?:not|[a-z]+n't|no longer|far from|never) (?:\w+ )?true"
    r"|(?:not|[a-z]+n't) (?:at all |really )?(?:so|the case) that"
    r"|(?:if only|wish) (?:it|that|this) (?:were|was) (?:true|so)|(?:tales?|fables?|superstitions?|fiction) that"
    r"|(?:fell|falls?|fallen) for (?:the|a|that) (?:\w+ ){0,2}?(?:story|line|idea|lie|claim) that"
    r"|sell you (?:the|a) (?:story|line|idea)"
    r"|(?:not|[a-z]+n't|never) (?:even )?(?:any|much|(?:an?|one|the) (?:single |slightest )?(?:shred|scrap|ounce|trace"
    r"|hint|iota|grain|bit|piece) of) (?:\w+ )?(?:evidence|proof|truth)"
    rf"|(?:lay|laid|put) to (?:rest|bed) (?:the|that|this) (?:\w+ )?{_IDEA}|ruled out (?:that|the (?:\w+ )?{_IDEA})"
    r"|refuse[sd]? to (?:believe|accept) that|pull the other one"
    r"|nowhere (?:does|do|did|has|have|will) (?:\w+ ){1,4}?(?:say|claim|suggest|find|read|said|found|advise)"
    r"|wish (?:i|we) could (?:say|tell|claim|promise|believe|report)"
    r"|untrue that|no truth in|debunk\w*|disprove[dn]|outdated advice|forget (?:the|what|that|anyone|people|those"
    r"|everyone)|ignore (?:the|what|anyone|people|those|every(?:one|body))"
    rf"|(?:nonsense|rubbish|lie|lies|false|wrong|mistaken|mistake|scam|hoax|misleading|dishonest|silly|daft|foolish"
    rf"|irresponsible|incorrect|fake news) (?:that|to {_TO_SAY})|wrong (?:when|about)|(?:are|is|were) wrong"
    r"|(?:any(?:one|body)|whoever|those) (?:who )?(?:says?|said|tells?|told|claims?)(?: you)?"
    r"|let any(?:one|body) tell you"
    rf"|(?:contrary to|despite) the {_IDEA} that"
    r")(?= )"
    r"|^ (?:(?:but|and|so|well|honestly|really) )?(?:who says|who said|since when|says who|as if)(?= )"
)
"""Words before a clause by which its teller doesn't hold it."""
_BACK = re.compile(
    rf" (?:{_IS} {_ADVERBS}{_UNTRUE}(?! (?:that|to|about) )"
    r"|nonsense|rubbish|a myth|a lie|old wives'? tale|bogus|hogwash|makes no sense"
    r"|(?:not|[a-z]+n't)(?: to be| \w+ly)? true|untrue"
    r"|no (?:\w+ ){0,2}?(?:evidence|proof|truth|basis|science) (?:for|of|behind|in|to|that) (?:\w+ )?"
    r"(?:it|that|them|this)"
    r"|nothing shows (?:it|they|that)|no (?:study|trial) shows (?:it|that)"
    r"|(?:nobody|no one) has (?:ever )?shown (?:it|that)|(?:advice|guidance) has (?:changed|moved on)"
    r"|(?:hasn't|haven't|has not|have not|has never|have never|never|was never|wasn't) (?:been )?"
    r"(?:shown|proven|stood up|held up|borne out|confirmed|survived)"
    r"|(?:doesn't|don't|didn't|does not|do not|did not|never) (?:stand up|hold up|hold water|add up)"
    r"|there(?:'s| is) no (?:need|reason) (?:to (?:delay (?:it|them)|wait that long)|for that)"
    r"|you (?:don't have to|needn't) wait that long"
    r"|(?:don't|do not|never) (?:believe|trust|listen to|fall for) (?:them|it|him|her|that|a word)|run a mile"
    r"|ignore (?:that|it|them|him|her)|(?:isn't|is not|aren't) something (?:i|we)[a-z']*"
    r"|(?:but|now|today|these days)(?: now)? (?:i|we) (?:now )?know better|changed (?:my|our) minds?"
    r"|(?:doesn't|does not|won't|don't) make (?:it|them|that) (?:true|so|right|a fact)"
    rf"|{_NOT_A_WORD}|nothing (?:could be|is|was) further from the truth"
    r"|where(?:'s| is) (?:the|your|their) (?:proof|evidence)"
    rf"|{_MADE_UP}"
    r"|(?:but|yet|though|while|when) (?:in (?:fact|truth|reality) )?(?:really |actually )?(?:they|it|there) "
    r"(?:really |actually )?"
    r"(?:have|has|holds?|contains?|brings?|is|are) (?:in (?:fact|truth|reality) |really |actually )?(?:very little"
    r"|hardly any|next to no|almost no|barely any|little|almost none|hardly a trace)"
    r"(?: of (?:it|that)| in (?:it|them))?"
    r"(?= $))(?= )"
)
"""Words behind a clause that take it back."""
_BACK_WHOLE = re.compile(
    r" (?:(?:but|except|only|well|and|sorry|sadly|alas) ){0,2}(?:no|nope|of course not|absolutely not|not at all|as if"
    r"|not so|(?:sadly|alas|unfortunately|i'm afraid|certainly|definitely) not|far from it|dream on|think again"
    r"|no chance|(?:i|we) (?:can't|cannot|can not)(?: say (?:so|that|it))?"
    rf"|so not true|please (?:don't|do not)|{_ADVERBS}{_UNTRUE}"
    r"|(?:(?:no|nope) )?(?:it|they|that) (?:doesn't|does not|don't|do not|isn't|is not|aren't|are not|can't|cannot"
    r"|won't|will not)(?: work| help)?|(?:it|they) (?:does|do) (?:nothing of the kind|no such thing)) $"
)
"""A clause behind that does no more than take back what was said: "it doesn't", and not "it doesn't taste nice"."""
_NO_ANSWER = re.compile(r" (?:an?|the|is|are|was|be|go|goes|to|no|so|not|say|says|said|never|isn't|it's|any) \S+ $")
"""Words before the last one by which that is no answer: "just say no"."""
_BEHIND = re.compile(
    rf" {_NOT_A_WORD} "
    r"| (?:but )?(?:(?:now|today|these days) )?(?:i|we)(?:'ve)? (?:now )?(?:know better|changed (?:my|our) minds?)(?= )"
    rf"| (?:or so (?:\w+ ){{1,3}}?)?{_MADE_UP}(?= )"
    r"| (?:but )?nothing (?:could be|is) further from the truth "
    r"| (?:or so (?:\w+ ){1,3}?)?(?:(?:but|well|sorry|no|nope|and|actually|sadly|i'm afraid) )*"
    r"(?:(?:it|that|they|she|he|this|i|we|the \w+"
    rf"|(?:the|that|this|those|these|such) (?:\w+ ){{0,2}}?(?:{_IDEA}|rules|warnings?|advice|bans?|fears?|limits?"
    r"|guidance|guidelines?|tips?)) )?"
    rf"(?:{_IS} {_ADVERBS}{_UNTRUE}|[a-z]+n't (?:\w+ )?(?:true|so|the case))(?! (?:that|to|about|if|when) )"
)
"""What opens a sentence behind that takes it back: "they're wrong", "it's nonsense"; not so "it's a myth that"."""
_OF_ITSELF = re.compile(
    rf" (?:(?:the|this|that|old) (?:\w+ )?(?:myths?|misconceptions?|lie|{_IDEA}) that|any(?:one|body)|whoever"
    rf"|those who|despite the|contrary to the) |^ myths? "
)
"""A frame that its own sentence calls untrue at its end: "the idea that ... *is a myth*"."""
_HOLDS_AFTER_ALL = re.compile(
    r" (?:(?:but|yet|though) (?:it|they|that|this|she|he)(?:(?:'s| is| are| was| were) (?:true|right|so|correct)"
    r"| does| do| did| works?| worked| really| actually)(?! not)"
    r"|(?:until|till) (?:i|we|recently|last|this))(?= )"
)
"""What sets right again what was doubted: "I didn't believe that ..., *but it does*", "... *until I tried it*"."""
_TURN = re.compile(
    r" (?:but|yet|though|although|anyway|the (?:truth|fact|reality) is|fact(?! that)|in reality|turns out) "
)
_WHOLE = re.compile(
    r"[.!?;,\n–—]| - |(?<=n't) (?=(?:i|we|he|she|it|they|you|so|and|the|my|our|his|her|that)(?:['’][a-z]+)?\b)", re.I
)
"""Where a clause behind ends; in speech without marks, where the next begins."""
_SET_ASIDE = re.compile(
    r"\b(?:forget|ignore|never mind|(?:don['’]t|do not|never|stop) (?:believ(?:e|ing)|listen(?:ing)? to|mind))\b"
    r"(?:(?!\b(?:that|who|anyone|people|if)\b)[^.!?;:,—–]){0,80}"
    # "Forget the old rule: no honey" gives the rule that is waved aside.
    r"(?:,|(?<!rule)(?<!advice)(?<!myth)(?<!idea)(?<!saying)[:—–]) ?(?!but\b)\S{1,24} \S"
    r"|\b(?:contrary to|unlike|far from|(?:myths?|wives(?:['’] tales?)?) (?:or not|aside|(?:was|were|are) right)|"
    r"(?:no|not|\w{1,8}n['’]t) (?:(?:an?|just|old) ){0,3}(?:myth|wives['’]? tale))\b(?:(?!\bthat\b)[^.!?;:,—–]){0,60}"
    r"[,—–] ?\S{1,24} \S"
    r"|(?:n['’]t|not|no|myth|false|wrong)\b[^.!?;:]{0,30}\bthat\b [^.!?;:,]{8,80}: \S",
    re.IGNORECASE,
)
"""Others waved aside before it is said: "forget the rule about honey, it's fine", "ignore the doctors: turmeric cures
colds", "myths aside, honey heals", "not true that doctors know best: honey cures"; not so in "forget the idea that"."""
_OPENING = 10
"""Characters of a claim in which a turn opens it: "a myth, *but it heals*"."""
_AFTER = 120
"""Characters behind its sentence that are looked at."""


def frames(claim: Claim, register: Register) -> int:
    """How often what stands around the claim takes it back: before it ("forget the rule that ..."), after it ("...
    is nonsense"), or in a short sentence behind ("... Not true.")."""
    rest = said_behind(claim)
    end = claim.end + len(rest)
    behind = claim.passage.text[end : end + _AFTER].lstrip(".!?;… ")
    asked = said_before(claim), claim.quote, claim.effect or "", next(iter(claim.subjects), ""), rest, behind
    known = register.frames.get(asked)
    if known is None:
        leads, _ = led(claim, register)
        once = leads and not _OF_ITSELF.search(plain(said_before(claim) + claim.quote))
        cautious = has_any(plain(claim.quote), [each for name in _CAUTIOUS for each in register.words.get(name, ())])
        after_all = bool(once) and _HOLDS_AFTER_ALL.search(plain(claim.quote)) is not None
        back = (
            after_all or _tails(once, rest, behind, cautious=cautious) or (not leads and _waved_aside(claim, register))
        )
        known = register.frames.keep(asked, leads + (back and (once or not leads)))
    return known


_CAUTIOUS = ("holds back", "made safe", "negations", "risk")
"""Lists of the words of a statement that is cautious itself."""
_CAUTION_UNTRUE = re.compile(
    r" (?:(?:the|this|that|all|those|these|any|their|your|such|every) (?:[a-z0-9']+ ){0,3}?(?:rules?|warnings?|bans?"
    r"|fears?|scares?|fuss|worr(?:y|ies)|panic|limits?|risks?|dangers?|caution|guidelines?|guidance|hysteria)"
    r"|(?:waiting|avoiding|delaying|cutting|halving|quartering|peeling|mashing|holding|worrying|skipping|fearing|banning"
    r"|fussing)(?: [a-z0-9']+){0,4}?)"
    rf" {_IS} {_ADVERBS}{_UNTRUE}(?= )"
)
"""A caution that is called untrue behind a statement: it lets that stand, unless it is the caution itself."""


def called_untrue(words: str) -> bool:
    """Whether a clause ends by calling itself untrue: "they should wait with egg until two that's nonsense"; not so
    where it is a rule that is called so: "babies can have honey the ban is a myth"."""
    return _CALLED_UNTRUE.search(plain(words)) is not None


_CALLED_UNTRUE = re.compile(
    r"(?: (?:and |but )?(?:that's|that is|it's|it is|(?:and|but) (?:they|she|he) (?:are|is))"
    r"|(?<! the) (?!rule|warning|advice|ban|risk|danger|fear|scare|limit|worry|guidance|waiting)[a-z0-9]+ is) "
    rf"{_ADVERBS}{_UNTRUE}(?: (?:and )?not (?:a|the) (?:fact|truth))? $"
    rf"| (?:(?:sadly|alas|unfortunately|i'm afraid|certainly|definitely) not|{_NOT_A_WORD}|{_MADE_UP}"
    r"|nothing (?:could be|is|was) further from the truth) $"
)


def _tails(leads: int, rest: str, behind: str, *, cautious: bool) -> bool:
    """Whether what follows a claim takes it back: the ``rest`` of its sentence, or what stands ``behind`` that. What
    was taken back before is only turned again where a "but" says so."""
    words, next_said = standing(plain(rest)), standing(plain(behind))
    if not cautious:
        words, next_said = _CAUTION_UNTRUE.sub(" ", words), _CAUTION_UNTRUE.sub(" ", next_said)
    back = _BACK.search(words) or _BEHIND.match(next_said) or _BACK.match(next_said)
    parts = [behind] if leads else [behind, rest.lstrip(", -–—"), _WHOLE.split(rest)[-1]]
    if back or any(_BACK_WHOLE.match(plain(_WHOLE.split(part, maxsplit=1)[0])) for part in parts):
        return True
    if leads:
        return _HOLDS_AFTER_ALL.search(words) is not None
    return _NO_ANSWER.search(words) is None and _BACK_WHOLE.search(words) is not None


def _waved_aside(claim: Claim, register: Register) -> bool:
    """Whether others are said to hold it, and the author says at once that it is not so: "some say wait till one, you
    really don't need to"."""
    if not OTHERS_SAY.search(said_before(claim)):
        return False
    behind = TAIL.sub("", claim.passage.text[claim.end : claim.end + _ANSWERED].replace("’", "'"))
    held = claim.quote.partition(" but ")[0].replace("’", "'")
    if _HELD_BACK.search(held) and _given_all_the_same(claim, register):
        return True
    if _HOLDS_BACK.search(f"{claim.quote}{behind}") and not _HELD_BACK.search(held):
        return True
    answer = plain(_STOPS.split(behind.lstrip(" ,;:.!–—-"), maxsplit=1)[0]).split()
    if answer[:1] in (["so"], ["because"]):
        return False  # "so you don't need to panic" follows from what they hold
    said = f" {' '.join(word for word in answer if word not in _LIGHT)} "
    if _BACK.search(said) or _BEHIND.match(said) or _BACK_WHOLE.match(said):
        return True
    return any(has_any(said, register.words.get(name, ())) for name in ("no need", "no need to hold back"))


def _given_all_the_same(claim: Claim, register: Register) -> bool:
    """Whether what others hold back is given behind a "but", no later and in no safer shape than they say: "they'll
    tell you to avoid nuts till five, *but nuts are fine*"."""
    text = claim.passage.text
    sentence = re.split(r"[.!?;\n]", text[claim.start : claim.end + _ANSWERED], maxsplit=1)[0]
    before, but, answer = sentence.replace("’", "'").partition(" but ")
    said = plain(answer)
    named = runs_of(answer) & subjects_of(claim) or _THEM.search(said)
    given = has_any(said, register.words.get("allows", ())) or _GAVE.search(said)
    if not but or not named or not given or has_any(said, (*register.words.get("made safe", ()), *_SAFER)):
        return False
    age, until = age_said(said, register), age_said(plain(before), register)
    return not has_any(said, register.words.get("negations", ())) and (age is None or (until or 0) > age)


_THEM = re.compile(r" (?:them|it|those) ")
_GAVE = re.compile(r" (?:gave|given|give|gives|had|has|have|ate|eats?|eaten|loved?|loves|enjoys?|enjoyed|offered) ")
_SAFER = ("butter", "butters", "powder", "flour", "paste", "cooked", "baked", "milled")
_HOLDS_BACK = re.compile(
    r"\b(?:but|yet|though)\b[^.!?]{1,70}?\b(?:a no (?:until|till|before|for)|not until|leave (?:it|them) (?:out|off)"
    r"|(?:must|should|has to|have to|needs to|need to) wait|wait (?:until|till)|must not|mustn't|quarter (?:it|them)"
    r"|cut (?:it|them)|keep (?:it|them) back)\b",
    re.IGNORECASE,
)
"""An answer that ends in holding the food back: "but it can carry spores, so it's a no until one"."""
_HELD_BACK = re.compile(
    r"\b(?:avoid|skip|wait|hold|keep|leave|until|till|before|no|not|never|dangerous|[a-z]{1,8}n't)\b", re.IGNORECASE
)
"""Words of a view that holds the food back of itself, which such an answer does not gainsay."""
_STOPS = re.compile(r"[.,;!?\n]| (?=but )")
_LIGHT = frozenset("but and though yet well honestly actually really just simply certainly no nope sorry".split())
"""Words of an answer that change nothing in it."""
_ANSWERED = 130
"""Characters behind a claim in which the answer to it may begin and end."""


def led(claim: Claim, register: Register) -> tuple[int, str]:
    """How often what leads up to the claim takes it back, and the words after the last time. The claim's own words
    may begin with it."""
    asked = said_before(claim), claim.quote, claim.effect or "", next(iter(claim.subjects), "")
    known = register.leads.get(asked)
    return known if known is not None else register.leads.keep(asked, _led(*asked))


def _led(leading: str, words: str, effect: str, subject: str) -> tuple[int, str]:
    quote = standing(plain(words))
    aside = _SET_ASIDE.search(leading + words)
    if aside is not None:
        ahead = plain((leading + words)[: aside.start()])  # "it's a myth that, contrary to what they say, ..."
        return int(ahead.endswith(" that ") and _DENIES.search(ahead) is not None), quote
    said = standing(_run_on(leading, words))
    if effect == "allergic-reaction":
        said = said.replace(" ignore ", " ")  # "ignore the hives" is what is claimed, and takes nothing back
    found = list(_DENIES.finditer(said))
    if not found or ((own := WARNS_ON.search(leading + words[:_OPENING])) and own.start("own") >= len(leading)):
        return 0, quote
    end = found[-1].end()
    # What is turned before its subject is named is turned before it is said: "a myth, the truth is grapes can choke".
    opens = max(
        len(said) - len(quote) + _OPENING, end + len(" though "), said.rfind(plain(subject)) + 1 if subject else 0
    )
    if _TURN.search(said, end, opens) or (effect == "harm" and said.startswith(" and ", end)):
        return 0, quote
    return len(found), said[end:]


WARNS_ON = re.compile(
    r"[,;–—] (?:and|plus|so|besides|also) (?:worse,? )?(?P<own>(?:it|they|that|those)"
    r"(?:['’]s|['’]re|(?: is| are| can| could| may| might)(?:n['’]t)?)\b)",
    re.IGNORECASE,
)
"""A warning of its own behind what was taken back: "there's no proof that it helps, *and it's a* choking risk"."""


def _run_on(leading: str, words: str) -> str:
    """The words that lead up to a claim and its own in one, as ``plain`` gives them."""
    return f"{plain(leading).rstrip()}{plain(words)}"


def less_frame(words: str, claim: Claim, register: Register) -> str:
    """Plain words around a claim, from where its frame ends: what takes it back is no word of what is taken back ("no
    good evidence that", "stop saying that")."""
    leads, rest = led(claim, register)
    if leads != 1 or not rest.strip() or frames(claim, register) != 1:
        return words
    return words[max(0, words.find(rest[:_BEGINNING].rstrip())) :]


_BEGINNING = 40


def unframed(claim: Claim) -> Claim:
    """The claim less the frame that its own words begin with, or that ends where it begins: "*never believe that* honey
    is fine"."""
    leading = said_before(claim)
    before, said = len(plain(leading).split()), _run_on(leading, claim.quote)
    found = [one for frame in (STANDS, _DENIES) for one in frame.finditer(said)]
    near = [one for one in found if len(said[: one.start()].split()) <= before + 1]
    inside = max((len(said[: one.end()].split()) - before for one in near), default=_FAR)
    words = list(_WORD.finditer(claim.quote))
    ahead = [one.start() for one in _WORD.finditer(leading)]
    if found and inside == _FAR and len(ahead) == before:
        # It ends well before the claim: the clause begins behind it.
        behind = max(len(said[: one.end()].split()) for one in found)
        opens = claim.start - len(leading) + ahead[behind] if behind < before else claim.start
        return replace(claim, sentence=(opens, claim.sentence[1] if claim.sentence else len(claim.passage.text)))
    if not _FAR < inside < len(words) - 1:
        return claim
    inside = max(0, inside)
    inside += words[inside][0] == "that"
    start = claim.start + words[inside].start()
    end = claim.sentence[1] if claim.sentence else len(claim.passage.text)
    return replace(claim, start=start, sentence=(start, end), polarity="asserts" if inside else claim.polarity)


_FAR = -3
"""Words between a frame and a claim with which the frame is none of it."""
_WORD = re.compile(r"[A-Za-z0-9%'’‘éèï]+")
