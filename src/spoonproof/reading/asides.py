"""What a food line says beside the food: what it is for, how long something is done to it, another amount of it.

None of it changes the food, so it is no word that was not understood; foods that are named in it with an article
("to fry the paneer") stand on lines of their own.
"""

from __future__ import annotations

import re

from spoonproof.model.kitchen import Foods
from spoonproof.reading.amount import amount_at
from spoonproof.reading.food_name import LineDraft
from spoonproof.reading.runs import tokens_of
from spoonproof.reading.times import find_times

_ASIDE = re.compile(
    r"(?i)\b(?:until[ \t][^,;()]{1,80}"  # "rinsed until the water runs clear"
    r"|(?:just[ \t])?(?:enough[ \t])?(?:for|to)[ \t](?:an?[ \t])?"
    r"(?P<purpose>[a-z]{2,14}(?:[ \t][^,;()]{0,60})?)"  # "for shaping"
    r"|(?:cut|slit|split|broken|torn|divided)?[ \t]{0,3}(?:in|into)[ \t](?:[0-9]{1,3}|two|three|four|six|eight)\b"
    r"|(?:kept|stored|cooled|chilled)[ \t][^,;()]{1,60}"
    r"|(?:keep|reserve|save|hold|set|skip|omit|leave|add|use|check|buy)[ \t][^,;()]{1,60}"
    # "keep a handful back", "skip for babies"
    r"|(?:about[ \t])?(?:the[ \t])?(?:thickness|length|width|size)[ \t]of[ \t][^,;()]{1,40}"
    r"|[0-9.]{1,5}[ \t]?%(?:[ \t](?:lean|fat|cocoa|protein|meat|fruit))?"
    r"|e\.g\.?|any[ \t](?:kind|colou?r|variety|type|sort|brand|size|shape)\b[^,;()]{0,40}"
    r"|or[ \t](?:more[ \t]|less[ \t])?(?:to[ \t]taste|as[ \t]needed|so|more|less)\b)",
)
_DENIED = re.compile(r"(?i)\bnot[ \t](?:too[ \t])?[a-z][a-z-]{2,15}")
_OTHER_AMOUNT = re.compile(r"(?i)[ \t,(](?:or|/)[ \t]+(?=[0-9½⅓⅔¼¾]|an?[ \t])")
_PART_END = re.compile(r"[,;()]")
_THE_OTHERS = re.compile(
    r"(?i)\b(?:to[ \t]cover|(?:(?:to|for)[ \t][a-z]{3,14}|for"
    r"|(?:soaked|cooked|boiled|steamed|blended|ground|roasted)[ \t]with)[ \t]the)[ \t]$"
)
_LONGEST = 40
_DENIED_BEFORE = re.compile(r"(?i)\b(no|not|without|free (?:of|from)|never|nor)\b[^;()]*$")
_IN_BRACKET = re.compile(r"\([^()0-9]{0,40}$")
_WITH_THE_OTHERS = re.compile(r"(?i)\bwith the [a-z]{2,16}\b")  # "soaked with the dal"
_WITH_A_TOOL = re.compile(r"(?i)\b(?:with|using|on|by) (?:an?|the|your) (?:[a-z]{2,12} ){0,3}[a-z]{3,12}(?=[,;)]|$)")
# What colour it is, which way a knife went, how hard the part is that is cut out: nothing of it is counted.
_LOOKS = re.compile(
    r"(?i)\b(?:red|yellow|purple|orange|white|brown|golden|black|blue|green|pink|pale|across|(?:hard|tough|woody|thick"
    r"|stringy|outer|inner)(?=[ \t](?:cores?|stems?|stalks?|ribs?|parts?|ends?|skins?|leaf|leaves)\b))\b"
)
_NOTE = re.compile(r"\([^()]{0,120}\)")  # what is still not read in a bracket is a word to the reader
_DIGITS = re.compile(r"[0-9]{1,9}(?:/[0-9]{1,3})?")
_SHARES = re.compile(r"(?i)\b(?:[0-9]{1,9}(?:/[0-9]{1,3})?|one|two|three|half|rest|other)\b")


def of_another_line(text: str, at: int) -> bool:
    """Whether the food at ``at`` is one of the dish's others: "ghee, to fry the paneer", "soaked with the dal"."""
    return _THE_OTHERS.search(text, max(0, at - _LONGEST), at) is not None


def use_denied(draft: LineDraft) -> None:
    """ "Egusi, not ground": what is not done to the food is read as nothing; "not peeled" is a word of its own."""
    for found in _DENIED.finditer(draft.open_text()):
        known = draft.measures.preparations.find(found[0])
        if not known or known[0].start > 0:
            draft.use(found.start(), found.end())


def use_other_amount(draft: LineDraft, after: int) -> None:
    """ "1 tsp dried rosemary, or 1 tbsp fresh": the same food in another amount is no word of the first.

    Its words are used up; where they name a food it is another one, and stays."""
    text = draft.open_text()
    cuts = draft.measures.cuts.find(draft.text)
    for sign in _OTHER_AMOUNT.finditer(text, after):
        reading = amount_at(text, sign.end(), draft.measures)
        end = _PART_END.search(text, sign.end())
        stop = end.start() if end else len(text)
        if any(cut.start <= sign.start() < cut.end for cut in cuts):
            continue  # "2 cm / 3/4 in cubes"
        if reading is None or reading.amount is None or stop - sign.end() > _LONGEST:
            continue
        if not draft.foods.find(text[sign.end() : stop]):
            draft.use(sign.start() + 1, stop)


def _within(words: str, food: str, other: str, foods: Foods) -> bool:
    """Whether ``words``, which name ``other``, only say once more what the food's own name says: the "peanuts" of a
    peanut butter, but not the "milk" beside almond milk, which would bring an allergen of its own."""
    record, said = foods.get(food), foods.get(other)
    if record is not None and said is not None and not said.allergens <= record.allergens:
        return False
    names = (record.name, *record.names) if record is not None else ()
    own = words.casefold().removesuffix("s")
    return any(own in re.findall(r"[^\W\d_]+", name.casefold().replace("s ", " ")) for name in names)


def _is_gloss(before: str, food: str, other: str, foods: Foods) -> bool:
    """ "Moong dal (split and skinned yellow lentils)": another name for a pulse, in a bracket without an amount."""
    own, said = foods.get(food), foods.get(other)
    if own is None or said is None or _IN_BRACKET.search(before) is None:
        return False
    return own.group == said.group == "pulse" and said.allergens <= own.allergens


def second_food(draft: LineDraft, food: str | None) -> None:
    """Another food in the words that are left: it would go unseen."""
    text = draft.open_text()
    said = [(word.start, word.end) for word in draft.measures.preparations.find(text)]
    for match in draft.foods.find(text):
        if any(start <= match.start and match.end <= end for start, end in said):
            continue  # "crisp" is no packet of crisps, "to fry" no fry
        draft.use(match.start, match.end)
        before, words = draft.text[: match.start], draft.text[match.start : match.end]
        record = draft.foods.get(match.food)
        if of_another_line(draft.text, match.start):  # "soaked with the dal", "water, for the rice"
            continue
        if match.food == "water" or (record is not None and record.name.lower().startswith("water")):
            continue
        if food is not None and (
            match.food == food  # "flattened rice (poha)", "peanut butter (100% peanuts)"
            or _within(words, food, match.food, draft.foods)
            or _is_gloss(before, food, match.food, draft.foods)
        ):
            continue
        denied = _DENIED_BEFORE.search(before)
        if denied is not None:  # "no salt or sugar"
            draft.use(denied.start(), denied.start() + len(denied[1]))
            continue
        message = f"“{words}” is a second food on this line, and only the first one is counted and checked."
        remedy = f"Give {words} a line of its own, or write it as “or:”."
        draft.find("second-food-on-a-line", match.start, match.end, message, remedy)


def left_over(draft: LineDraft) -> str:
    """The words of the line that say nothing known here, and a finding where there are any."""
    text = draft.open_text()
    known = bytearray(len(text))
    for word in draft.measures.preparations.find(text):
        known[word.start : word.end] = b"\1" * (word.end - word.start)
    asides = [found.span() for said in (_WITH_THE_OTHERS, _WITH_A_TOOL, _ASIDE) for found in said.finditer(text)]
    for start, end in (*asides, *(found.span() for said in (_NOTE, _LOOKS) for found in said.finditer(draft.text))):
        known[start:end] = b"\1" * (end - start)
    if draft.measures.preparations.find(draft.text, ("prepared", "state")):
        for time in find_times(text):  # "soaked for 6-8 hours"
            known[time.start : time.end] = b"\1" * (time.end - time.start)
    said = bytes(a or b for a, b in zip(known, draft.used, strict=True)) + b"\0\0"
    for share in _SHARES.finditer(text):
        if said[share.end() + 1]:  # "2 onions, 1 chopped, one finely sliced"
            known[share.start() : share.end()] = b"\1" * (share.end() - share.start())
    left = [(a, b) for a, b, word in tokens_of(text) if not known[a] and draft.measures.unit(word) is None]
    left += [number.span() for number in _DIGITS.finditer(text) if not known[number.start()]]
    left.sort()
    if not left:
        return ""
    words = " ".join(draft.text[a:b] for a, b in left)
    remedy = "Say it in other words, or put it in the story."
    draft.find("words-not-understood", left[0][0], left[-1][1], f"“{words}” was not understood here.", remedy)
    return words
