"""What a food line says beside its food: what it is for, how long something is done to it, another amount of it, the
foods it offers in its place ("butter or olive oil"), each an ``or:`` choice, so that its allergens are seen.

Asides change nothing of the food, so they are no words that were not understood; foods that are named in them with an
article ("to fry the paneer") stand on lines of their own.
"""

from __future__ import annotations

import re

from spoonproof.model.food import NameMatch
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import Amount, FoodLine
from spoonproof.model.record import replace
from spoonproof.reading.amount import amount_at, moved
from spoonproof.reading.food_name import Alternative, FoodName, LineDraft
from spoonproof.reading.kinds import GROUPS
from spoonproof.reading.runs import key_of, tokens_of
from spoonproof.reading.times import find_times

_ASIDE = re.compile(
    r"(?i)\b(?:until[ \t][^,;()]{1,80}"  # "rinsed until the water runs clear"
    r"|(?:just[ \t])?(?:enough[ \t])?(?:for|to)[ \t](?:an?[ \t])?"
    r"(?P<purpose>[a-z]{2,14}(?:[ \t][^,;()]{0,60})?)"  # "for shaping"
    r"|(?:cut|slit|split|broken|torn|divided)?[ \t]{0,3}(?:in|into)[ \t](?:[0-9]{1,3}|two|three|four|six|eight)\b"
    r"|for[ \t][0-9½¼¾][^,;()]{1,60}|(?:kept|stored|cooled|chilled)[ \t][^,;()]{1,60}"
    r"|(?:keep|reserve|save|hold|set|skip|omit|leave|add|use|check|buy)[ \t][^,;()]{1,60}"
    # "keep a handful back", "skip for babies"
    r"|(?:about[ \t])?(?:the[ \t])?(?:thickness|length|width|size)[ \t]of[ \t][^,;()]{1,40}"
    r"|[0-9.]{1,5}[ \t]?%(?:[ \t](?:lean|fat|cocoa|protein|meat|fruit))?"
    r"|e\.g\.?|any[ \t](?:kind|colou?r|variety|type|sort|brand|size|shape)\b[^,;()]{0,40}"
    r"|or[ \t](?:more[ \t]|less[ \t])?(?:to[ \t]taste|as[ \t]needed|so|more|less)\b)"
)
_DENIED = re.compile(r"(?i)\bnot[ \t](?:too[ \t])?[a-z][a-z-]{2,15}")
_OTHER_AMOUNT = re.compile(r"(?i)[ \t,(](?:or|/|\|)[ \t]+(?=[0-9½⅓⅔¼¾]|an?[ \t])")
_PART_END = re.compile(r"[,;()]|[ \t][-–—][ \t]")
_THE_OTHERS = re.compile(
    r"(?i)\b(?:to[ \t]cover|(?:(?:to|for)[ \t][a-z]{3,14}|for"
    r"|(?:soaked|cooked|boiled|steamed|blended|ground|roasted)[ \t]with)[ \t]the"
    r"|(?:for|measured)(?:[ \t][0-9½¼¾/]{1,5}[ \t]?[a-z]{1,7})?(?:[ \t]of)?)[ \t]$"
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
_SHARES = re.compile(r"(?i)[½⅓⅔¼¾]|\b(?:[0-9]{1,9}(?:/[0-9]{1,3})?|one|two|three|half|rest|other)\b")


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
    find_words = draft.measures.preparations.find
    words = [(word.start, word.end) for word in find_words(text)]
    asides = [found.span() for said in (_WITH_THE_OTHERS, _WITH_A_TOOL, _ASIDE) for found in said.finditer(text)]
    notes = [found.span() for said in (_NOTE, _LOOKS) for found in said.finditer(draft.text)]
    soaked = find_times(text) if find_words(draft.text, ("prepared", "state")) else ()  # "soaked for 6-8 hours"
    for start, end in (*words, *asides, *notes, *((time.start, time.end) for time in soaked)):
        known[start:end] = b"\1" * (end - start)
    said = bytes(a or b for a, b in zip(known, draft.used, strict=True)) + b"\0\0"
    for share in _SHARES.finditer(text):
        if said[share.end() + 1]:  # "2 onions, 1 chopped, one finely sliced"
            known[share.start() : share.end()] = b"\1" * (share.end() - share.start())
    left = [(a, b) for a, b, word in tokens_of(text) if not known[a] and draft.measures.unit(word) is None]
    left += [number.span() for number in _DIGITS.finditer(text) if not known[number.start()]]
    left.sort()
    if not left:
        return ""
    unknown = " ".join(draft.text[a:b] for a, b in left)
    remedy = "Say it in other words, or put it in the story."
    draft.find("words-not-understood", left[0][0], left[-1][1], f"“{unknown}” was not understood here.", remedy)
    return unknown


_LONGEST_OFFER = 80  # characters between a food and the one that may stand in for it
_MOST_ITEMS = 4  # of "olive, sunflower or vegetable oil"
_MOST_HEAD = 2  # words that may belong to all of them
_MOST_WORDS = 3  # of one item of such a list
_OR = re.compile(r"(?i)[ \t]or[ \t]|(?<=[^\W\d_])[ \t]?/[ \t]?(?=[^\W\d_])")
_SIDE_END = re.compile(r"[;()\[\]–—]")
_RIGHT_END = re.compile(r"[,;()\[\]–—]")
_OFFERS = re.compile(
    r"(?i)\bor\b|(?<![0-9])/(?![0-9])|\be\.?g\b|\bi\.?e\b|\b(?:you can (?:also )?use|such as|can be|could be|may be"
    r"|for example|ideally|preferably|alias|aka|also called)\b"
)
_ADDS = re.compile(r"(?i)\b(?:plus|with|without|in|from|and not|not|no(?!-)|for)\b")
_OPENS = re.compile(r"[(\[][ \t]{0,3}(?:[^\W\d_]{1,20},?[ \t]{1,3}){0,2}$")
_LISTS = re.compile(
    r"[ \t]{0,3}(?::|[ \t][–—-])[ \t]{1,3}(?:[^\W\d_]{1,20}[ \t]{1,3}){0,2}$"
)  # "nuts: pecans or walnuts"
_GOES_ON = re.compile(r"(?i)[ \t]{0,3}(?:,|/|,?[ \t]{1,3}(?:or|and))[ \t]{0,3}(?:[^\W\d_]{1,20}[ \t]{1,3}){0,2}$")
_OVER_ONE = re.compile(r"[ \t]{0,3},[ \t]{0,3}[^\W\d_]{2,20}(?=[ \t]{0,3},|[ \t]{1,3}(?:or|and)\b)")  # ", beans, peas"
_AND_WITH_IT = re.compile(  # "(or plain flour plus ½ tsp baking powder)"
    r"[ \t]{0,3}(?:,?[ \t](?:plus|and|with)|[+&])[ \t]{1,3}"
    r"(?:[0-9½⅓⅔¼¾/.]{1,5}[ \t]?[^\W\d_]{1,12}[ \t]{1,3}(?:of[ \t])?)?"
)
_DENIES = re.compile(r"(?i)\b(?:no(?!-)|not|never|nor|without|free (?:of|from)|instead of)\b")
_AFTER_OR = re.compile(r"(?i)\bor[ \t]{1,3}")


def shared_head(draft: LineDraft, text: str) -> FoodName | None:
    """ "Beef or chicken stock", "olive, sunflower or vegetable oil": one last word belongs to all of them.

    The first is the line's food; the others are kept in ``draft.offered``. None where the words are foods each.
    """
    found = _OR.search(text)
    if found is None or _in_a_bracket_of_its_own(text, found.start(), draft.foods):
        return None
    end = _RIGHT_END.search(text, found.end())
    last = draft.foods.match(text[found.end() : end.start() if end else len(text)])
    if last is None:
        return None
    name = text[found.end() + last.start : found.end() + last.end]
    words = name.split()
    for count in range(1, min(_MOST_HEAD, len(words) - 1) + 1):  # "oil", then "oil spray"
        shared = _shared(draft, text, " ".join(words[-count:]), found, last)
        if shared is not None:
            return shared
    return None


def _shared(draft: LineDraft, text: str, head: str, found: re.Match[str], last: NameMatch) -> FoodName | None:
    """The food before the "or" that ends in ``head`` as the ``last`` one does; the others are kept as offered."""
    items: list[tuple[int, int, str]] = []
    for start, stop in reversed(_items(text, found.start())):
        match = _with_head(text[start:stop], head, draft.foods)
        if match is None:
            break
        items.append((start + match.start, stop, match.food))
        if items[-1][0] > start and text[start : items[-1][0]].strip():
            break  # "2 tbsp light olive or sunflower oil": the list begins here
    if not items:
        return None
    first = items[-1]
    draft.use(first[0], found.end() + last.end)
    others = [*reversed(items[:-1]), (found.end() + last.start, found.end() + last.end, last.food)]
    draft.offered += [Alternative(a, b, food, first[1]) for a, b, food in others]
    return FoodName(first[0], first[1], first[2])


def _in_a_bracket_of_its_own(text: str, at: int, foods: Foods) -> bool:
    """Whether ``at`` stands in a bracket behind a food: "milk (formula, or whole milk)"."""
    opens = text.rfind("(", 0, at)
    return opens > text.rfind(")", 0, at) and foods.match(text[:opens]) is not None


def _items(text: str, stop: int) -> list[tuple[int, int]]:
    """The parts between commas before ``stop``, back to a bracket; the last few of them."""
    begin = max((found.end() for found in _SIDE_END.finditer(text, 0, stop)), default=0)
    parts: list[tuple[int, int]] = []
    for piece in text[begin:stop].split(","):
        parts.append((begin, begin + len(piece)))
        begin += len(piece) + 1
    return [(a, b) for a, b in parts if text[a:b].strip()][-_MOST_ITEMS:]


def _with_head(item: str, head: str, foods: Foods) -> NameMatch | None:
    """The food that the last words of ``item`` and ``head`` name together, placed in ``item``."""
    words = item.split()
    for count in range(min(_MOST_WORDS, len(words)), 0, -1):
        own = " ".join(words[-count:])
        match = foods.match(f"{own} {head}")
        if match is not None and match.end == len(own) + 1 + len(head) and match.start < len(own):
            place = item.rfind(words[-count]) if count == 1 else item.find(words[-count])
            at = place + match.start
            return NameMatch(at, len(item.rstrip()), match.food)
    return None


def offered_foods(draft: LineDraft, name: FoodName, food: str | None) -> list[Alternative]:
    """Every food that the line offers in the place of its own; its words are used up."""
    found = list(draft.offered)
    text = draft.open_text()
    said = [(word.start, word.end) for word in draft.measures.preparations.find(text)]
    before = max([name.end, *(one.end for one in found)])
    of_a_kind = bool(GROUPS.keys() & key_of(draft.text[name.start : name.end])[-1:])  # "fresh herbs: parsley, dill"
    within = bool(found)
    for match in draft.foods.find(text):
        if match.start < before or any(a <= match.start and match.end <= b for a, b in said):
            continue
        if match.food == food and found:
            before = match.end  # "soya milk, because I was out of almond milk"
            continue
        between = draft.text[before : match.start]
        if of_a_kind and within:
            between = _OVER_ONE.sub("", between, 1)
        goes_on = within and bool(_GOES_ON.fullmatch(between) or _with_the_other(draft.text, before, between))
        listed = of_a_kind and not within and bool(_LISTS.fullmatch(between))
        if len(between) > _LONGEST_OFFER or _DENIES.search(between) or not (goes_on or listed or _offers(between)):
            break
        within = True
        own = _of_kind(draft, match, name)
        amount = _own_amount(draft, before, match.start)
        offer = _AFTER_OR.search(draft.text, before, match.start)
        says = offer.start() if offer else match.start
        if own != food:
            found.append(Alternative(match.start, match.end, own, says, amount))
        if offer:
            draft.use(offer.start(), offer.end())
        draft.use(match.start, match.end)
        before = match.end
    return found


def _with_the_other(text: str, before: int, between: str) -> bool:
    """Whether what follows in a bracket goes with the food that the bracket offers."""
    return text.rfind("(", 0, before) > text.rfind(")", 0, before) and _AND_WITH_IT.fullmatch(between) is not None


def _offers(between: str) -> bool:
    offers = list(_OFFERS.finditer(between))
    if offers:
        return _ADDS.search(between, offers[-1].end()) is None
    return _OPENS.search(between) is not None and _ADDS.search(between) is None


def _of_kind(draft: LineDraft, match: NameMatch, name: FoodName) -> str:
    """ "Oil (olive)": the words in the bracket and the name make one name."""
    words = f"{draft.text[match.start : match.end]} {draft.text[name.start : name.end]}"
    whole = draft.foods.match(words)
    return whole.food if whole is not None and whole.end - whole.start == len(words) else match.food


def _own_amount(draft: LineDraft, start: int, end: int) -> Amount | None:
    """ "2 tsp honey or 1 tsp sugar"."""
    after = _AFTER_OR.search(draft.text, start, end)
    reading = amount_at(draft.text, after.end(), draft.measures) if after is not None else None
    if reading is None or reading.amount is None or reading.end > end:
        return None
    draft.use(reading.start, reading.end)
    return moved(reading.amount, draft.place)


def choices_of(line: FoodLine, draft: LineDraft, name: FoodName, offered: list[Alternative]) -> tuple[FoodLine, ...]:
    """The line once more for each food it offers. What stands between the line's own name and the offer belongs to
    its own food alone ("10 grapes, quartered, or 20 g raisins")."""
    choices: list[FoodLine] = []
    for one in offered:
        record = draft.foods.get(one.food)
        plain = record is not None and not record.parent
        food = draft.foods.variant(one.food, line.state) if line.state and plain else one.food
        if food == line.food or any(food == choice.food for choice in choices):
            continue
        own = draft.place(name.end, one.says) if one.says > name.end else None
        inside = [span for _, span in line.prepared if own and own.start <= span.start < own.end]
        choices.append(
            replace(
                line,
                name=draft.text[one.start : one.end],
                name_span=draft.place(one.start, one.end),
                food=food,
                amount=one.amount or line.amount,
                prepared=tuple(pair for pair in line.prepared if pair[1] not in inside),
                cuts=tuple(cut for cut in line.cuts if not (own and own.start <= cut.span.start < own.end)),
                choices=(),
            )
        )
    return tuple(choices)
