"""What a claim asks: its key in the register, and what is measured for it."""

from __future__ import annotations

import re

from spoonproof.claims.entries import Entry, Key
from spoonproof.claims.judging.comparing import compared_with, known_as
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.frames import less_frame
from spoonproof.claims.judging.free_from import CONTAINING, IS_FREE, heads_the_page, named_absent, of_what_is_made
from spoonproof.claims.judging.kinds import kind_of, probe_of_kind
from spoonproof.claims.judging.polarity import cannot_cope
from spoonproof.claims.judging.probes import AnyProbe, DishProbe, FoodProbe, NoProbe
from spoonproof.claims.judging.read_as import TAKEN_UP
from spoonproof.claims.judging.reading import around, clause, months_of, runs_of, subjects_of
from spoonproof.claims.judging.stance import stance_of
from spoonproof.claims.register import Register
from spoonproof.claims.wording import nutrient_name
from spoonproof.claims.words import has_any, plain, slug
from spoonproof.model.claim import UNNAMED, Claim
from spoonproof.model.numbers import Numbers
from spoonproof.model.plural import singular
from spoonproof.model.record import replace

_THIS = frozenset("this these our my".split())
_LEADING = _THIS | frozenset("the a an one each every per that those whole".split())
_HOME_MADE = re.compile(r"\b(?:home ?-?made|(?:my|our|your|their) own|from scratch)\b", re.IGNORECASE)
_AS_BOUGHT = re.compile(r"\b(?:dry|dried|raw|uncooked) $", re.IGNORECASE)
_DISH_NOUNS = frozenset("dish recipe meal bowl bowls pot portion portions serving servings one".split())
_COOKED_DISHES = frozenset(
    """mash puree porridge stew soup curry bake pie muffin muffins pancake pancakes fritter fritters bites fingers
    fishcakes meatballs patties biscuits cookies cake cakes loaf pudding sauce dip spread smoothie lunch dinner supper
    breakfast snack treat""".split()
)
_MEASURE_REACH = 30
_BEFORE = 16
"""Characters before a claim in which the "no" of its first food may stand."""
_SPOONFULS = tuple(
    f"{measure} of {this}"
    for measure in "spoonful spoonfuls tablespoon teaspoon cup bowl bowlful portion serving helping slice".split()
    for this in ("this", "it", "these", "them")
)
_HERE = tuple(f" {word} {this} " for word in ("in", "to") for this in ("here", "it", "this", "these", "them", "there"))
_POINTING = frozenset("it this that these those they them one there".split())
_IF = (" if ", " once ", " when ")
"""How a condition begins whose advice stands behind the comma: "once they have had egg and all is well, keep it in"."""
_GENERIC = frozenset({"drinks", "baby-food", "seafood", "food"})
_SOLIDS = 6
"""Months: about when solid food begins (WHO, NHS)."""
_NO_SOLIDS = frozenset(
    "milk breast-milk breastmilk formula infant-formula water vitamin vitamins supplement drops".split()
)


_WHAT_IT_DOES = {"brain": "brain-development", "eyes": "eyesight"}
"""What evidence is listed for, by the part of the body that a statement names: "good for the brain"."""


def key_of_claim(claim: Claim, context: Context, register: Register) -> Key:
    """What the register is asked."""
    months, stated = months_of(claim, context, register)
    subjects = subjects_of(claim) | _said_before(claim)
    stance = stance_of(claim, register)
    if claim.kind == "safety-age" and stance == "permits":
        subjects -= _excluded(claim)
    elif claim.kind == "safety-age" and stance == "warns" and (held := _IF_THEY_HAVE.search(plain(claim.quote))):
        subjects -= runs_of(held[0])
    # A bar between: "than red meat" and then "iron" is no meat's iron.
    near = plain(clause(claim)) + (f"|{plain(claim.relates_to)}" if claim.relates_to else "")
    if _looks_past_commas(claim, near):
        near = plain(around(claim))
    key = Key(
        kind=claim.kind,
        subjects=subjects,
        effect=_WHAT_IT_DOES.get(claim.effect or "", claim.effect),
        level=claim.level,
        words=less_frame(_own_words(claim, register), claim, register),
        near=less_frame(near, claim, register),
        months=months,
        today=context.today,
        stance=stance,
        foods=claim.foods,
    )
    early = claim.kind == "safety-age" and stance == "permits" and stated and months < _SOLIDS
    if early and not subjects & _NO_SOLIDS and not _false(register.truth(key)):
        # Whatever it is ("start this from four months"), it is food before its time; of honey there is worse to say.
        subjects |= {"solid-food"}
        key = replace(key, subjects=subjects)
    if _plain_dish(claim, key, stated and months >= max(_SOLIDS, context.ages[0]), register):
        said = plain(claim.passage.text[max(0, claim.start - _AROUND_DISH) : claim.end + _AROUND_DISH])
        solids = replace(key, subjects=frozenset({"solid-food"}), foods=(), near=said)
        known = register.truth(solids)
        if known is not None and known.truth == "true":
            return solids
    unnamed = claim.kind == "process" and not claim.foods and not claim.nutrients
    generic = claim.kind == "safety-age" and set(claim.foods) <= _GENERIC
    # "Cow's milk is fine as a main drink": what is drunk may stand outside the claim's own words. Where the register
    # knows what is named ("salt is fine in purees"), the purees beside it are no answer.
    if unnamed or (generic and not _known(key, claim, register)):
        return replace(key, subjects=subjects | runs_of(near) - (_excluded(claim) if stance == "permits" else set()))
    return key


_IF_THEY_HAVE = re.compile(
    r"(?<= )(?:if|as long as|so long as|provided|because|since) "
    r"(?:they|she|he|it|you|baby|babies) (?:eats?|has|have|drinks?|gets?|likes?) .*$"
)
"""What somebody has in a condition is not what is kept from them: "needs no vitamin B12 if she eats seaweed"."""


def _excluded(claim: Claim) -> frozenset[str]:
    """What its sentence leaves out behind the claim's own words: "babies can have most things, as long as there is no
    salt or sugar in it"."""
    behind = plain(around(claim)).partition(plain(claim.quote).strip())[2]
    out = runs_of(" ".join(found[0] for found in _EXCLUDED.finditer(behind)))
    if out & {"salt", "sugar"}:
        out |= {"salt", "sodium_mg", "sugars_g"}
    return out - runs_of(claim.quote)


_EXCLUDED = re.compile(
    r" (?:no|without|without any|minus) (?:added )?[a-z]+(?: (?:or|and|nor) (?:added )?[a-z]+)?(?= )"
)


def _looks_past_commas(claim: Claim, near: str) -> bool:
    """Whether what decides a claim may stand behind a comma: what to do after a rash from egg ("just keep giving it"),
    the false sign before the right one ("isn't just teeth, it's a sign of being ready"), what sweetens after "no added
    sugar at all"."""
    if claim.effect in ("allergic-reaction", "drops", "readiness-signs"):
        return True
    if claim.kind == "allergen" and near.startswith(_IF):
        return True
    if claim.kind == "nutrient-content" and _COMPARES_ON.match(claim.passage.text, claim.end):
        return True
    return claim.level in ("none", "free") and "sugars_g" in claim.nutrients


_COMPARES_ON = re.compile(
    r",? (?:(?:and|with|it|has|holds|even|far|much|way) ){0,4}(?:more|less) (?:of it |of that )?than "
)
"""What holds it against another food right behind it: "rich in protein, with more than an egg"."""


def _said_before(claim: Claim) -> frozenset[str]:
    """What "much of it" points at in words on what a body cannot deal with: "no salt, kidneys can't cope with much of
    it"."""
    if claim.foods or not cannot_cope(claim):
        return frozenset()
    return runs_of(claim.passage.text[max(0, claim.start - _OF_IT_REACH) : claim.start])


_OF_IT_REACH = 60


def _plain_dish(claim: Claim, key: Key, late: bool, register: Register) -> bool:
    """Whether it gives a dish from an age at which solids have begun, and the register knows nothing of what is in it:
    "swede and pear mash from seven months". What is a danger later on ("not before five years") has its own row."""
    if claim.kind != "safety-age" or claim.polarity != "asserts" or key.stance != "permits" or not late:
        return False
    return register.truth(key) is None and not any(
        _false(register.truth(replace(key, months=months))) for months in _LATER_DANGERS
    )


_LATER_DANGERS = (6, 11, 17, 23, 35, 47, 59)
"""Months just before which a danger ends in one row or another."""
_AROUND_DISH = 160
"""Characters either side of a dish's age in which a danger named keeps the register from answering for it."""


def _false(entry: Entry | None) -> bool:
    return entry is not None and entry.truth == "false"


def _own_words(claim: Claim, register: Register) -> str:
    """The claim's own words, with the "ask your doctor before" that stands right in front of them: "giving peanut with
    severe eczema" is a promise by itself, and good advice behind it. So with the "too much" or "too little" that what
    they name is said to be: "iron can slow growth" is not what "too little iron can slow growth" says."""
    words = plain(claim.quote)
    lead = plain(claim.passage.text[max(0, claim.start - _LEAD) : claim.start])
    if amount := _AMOUNT.search(lead):
        words = f"{amount[0]}{words.lstrip()}"
    elif not claim.foods and _NO_FOOD.search(lead):
        words = f" no food{words}"  # "no rice pudding makes a baby sleep"
    if has_any(words, register.words.get("medicine", ())):
        return words
    if claim.kind == "function" and _BRINGS_HARM.search(words):
        return plain(clause(claim))  # "watering it down can make a baby ill": what harms may begin before "it"
    uptake = claim.kind == "function" and TAKEN_UP.search(words)
    if uptake and " than " not in (near := plain(clause(claim))):
        return near  # what is taken up, and what it is eaten with, may stand on either side
    for said in register.words.get("doctor first", ()):
        _, found, rest = lead.rpartition(plain(said))
        if found and _FIRST.fullmatch(rest):
            return f"{lead}{words.lstrip()}"
    return words


_BRINGS_HARM = re.compile(r" (?:harms?|hurts?|makes? (?:[a-z]+ ){1,4}?(?:ill|sick|poorly|unwell)) ")
_AMOUNT = re.compile(
    r" (?:too (?:much|many|little|few)|(?:a )?lack of|not enough|short(?:age)? of|low|plenty of|lots of) $"
)
"""What stands right in front of a claim's words and turns or measures what they say."""
_NO_FOOD = re.compile(r" no (?:[a-z]+ ){1,2}$")
_LEAD = 48
"""Characters before a claim in which "ask your doctor before" may stand."""
_FIRST = re.compile(r"(?:first )?(?:before|about|if|when) (?:(?:you|your|the|a|baby|they|trying) ){0,3}")


def _known(key: Key, claim: Claim, register: Register) -> bool:
    """Whether the register says something of the very things that a claim names, generic words apart."""
    own = replace(key, subjects=key.subjects - _GENERIC)
    return bool(claim.subjects) and any(entry.about and entry.truth for entry in register.matching(own))


def probe_of(claim: Claim, numbers: Numbers | None, register: Register, context: Context) -> AnyProbe:
    """What to measure: the food it names, else the dish; nothing where neither is known."""
    if numbers is None:
        return NoProbe()
    foods = foods_of(claim, numbers, context)
    than = compared_with(claim, numbers, context)
    has_dish = bool(numbers.dish_foods())
    if not foods and not has_dish and (kind := kind_of(claim, register)):
        return probe_of_kind(kind, FoodProbe(kind, numbers, register, context, than))
    # "With no added sugar" under the title "Date and nut balls" is said of the balls, not of the dates; "no honey, no
    # sugar" is said of what honey is left out of.
    carried = any(step.startswith("carried from before") for step in claim.steps)
    left_out = claim.level in ("none", "free") and (_left_out(claim, register) or _in_here(claim))
    titled = heads_the_page(claim)
    # "No sugar, just fruit": a class of foods that no table has figures for is what the dish is made of.
    a_class = bool(claim.foods) and not foods
    made = claim.kind == "allergen" and of_what_is_made(claim, _called(context) | _DISH_NOUNS)
    without = left_out or made or ((carried or titled or a_class) and claim.level in ("none", "free"))
    if (left_out or made) and not has_dish:
        return NoProbe()
    # "Cinnamon calms, and one spoonful of this gives four grams": "this" is what is in the spoon, whatever came before.
    said = plain(claim.passage.text[max(0, claim.start - _MEASURE_REACH) : claim.start] + claim.quote)
    spoonful = claim.kind in ("quantity", "nutrient-content") and has_any(said, _SPOONFULS)
    # "Contains: gluten, milk" is said of what is before her, and not that milk holds gluten.
    bare = "gluten-in-food" in claim.nutrients and plain(claim.quote).split()[:1] in (["contains"], ["contain"])
    if (spoonful or bare) and not has_dish:
        return NoProbe()
    # "My own stock without salt" is not what the table has under stock.
    if claim.level in ("none", "free") and _HOME_MADE.search(
        claim.passage.text[max(0, claim.start - _BEFORE) : claim.end]
    ):
        return NoProbe() if not has_dish or foods else DishProbe(numbers, register, context, than)
    holds = claim.kind == "allergen" and claim.level is None and has_any(plain(claim.quote), CONTAINING)
    held_against = claim.kind in ("quantity", "nutrient-content") and _held_against(claim)
    if held_against and not has_dish:
        return NoProbe()
    begun = carried and claim.kind in _OF_WHAT_IS_EATEN and _begins_anew(claim)
    # "More iron than beef", and no more: the dish is what is held against beef.
    alone = claim.kind == "comparative" and foods == [than]
    if has_dish and (
        without or spoonful or bare or holds or held_against or begun or alone or _names_dish(claim, numbers, context)
    ):
        return DishProbe(numbers, register, context, than)
    if foods and not claim.of_dish:
        return FoodProbe(foods[0], numbers, register, context, foods[1] if len(foods) > 1 else than)
    # In a recipe's own words "it" that points at nothing else is the dish.
    pointing = all(plain(subject).strip() in _POINTING or _is_nutrient(claim, subject) for subject in claim.subjects)
    if has_dish and (claim.of_dish or (not claim.foods and pointing) or (not foods and titled)):
        return DishProbe(numbers, register, context, than)
    return NoProbe()


_OF_WHAT_IS_EATEN = frozenset({"nutrient-content", "quantity", "comparative"})
_TEXTS = frozenset({"story", "description", "social", "super"})


def _begins_anew(claim: Claim) -> bool:
    """Whether what it is about was carried into a text of the recipe's own from another one, a step or the title: a
    story that begins "A source of protein" or "It is rich in iron" speaks of the dish, not of the last step's pear."""
    if claim.passage.kind not in _TEXTS or {plain(subject).strip() for subject in claim.subjects} & {"they", "these"}:
        return False
    before = plain(claim.passage.text[: claim.start])
    return not any(f" {word}" in before for word in _carried(claim))


def _carried(claim: Claim) -> list[str]:
    """What a claim's subject was carried from, in plain words."""
    said = (step.partition("“")[2].rstrip("”") for step in claim.steps if step.startswith("carried from before"))
    return [singular(plain(word).strip()) for word in said]


def _left_out(claim: Claim, register: Register) -> bool:
    """Whether its foods are what is left out: "no honey, no sugar", "dairy, egg and sesame free"."""
    text = claim.passage.text
    words = plain(f"{text[max(0, claim.start - _BEFORE) : claim.start]}{claim.quote}")
    said = [plain(subject) for subject in claim.subjects]
    if not said:
        return False
    if any(f" {no}{said[0]}" in words for no in ("no", "no added", "without", "without added", "minus", "neither")):
        return True
    if IS_FREE.search(plain(claim.quote)):
        return False  # "cheese isn't dairy-free": what it is said of stands before its verb
    listed = {word for name in named_absent(claim, register) for word in register.allergens.words[name]}
    return all(subject.strip() in listed for subject in said)


def _in_here(claim: Claim) -> bool:
    """Whether it is said of what is before her, whatever was named: "unsalted butter, and there's no sugar in here"."""
    behind = plain(claim.passage.text[claim.end : claim.end + _MEASURE_REACH])
    return behind.startswith(_HERE)


def _is_nutrient(claim: Claim, subject: str) -> bool:
    """Whether the subject of an amount is the nutrient itself: "there are 11 grams of protein in 100 g"."""
    return claim.kind == "quantity" and plain(subject).strip() in {nutrient_name(n).lower() for n in claim.nutrients}


def _names_dish(claim: Claim, numbers: Numbers, context: Context) -> bool:
    """Whether its one subject is the dish: "a portion", "this dish", "these ribbons" where ribbons are its title."""
    if len(claim.subjects) != 1:
        return False
    words = plain(claim.subjects[0]).split()
    lead = next((at for at, word in enumerate(words) if word not in _LEADING), len(words))
    noun = words[lead:]
    if not noun:
        return False
    if set(noun) <= _DISH_NOUNS:
        return True
    if claim.level in ("none", "free") and set(noun) <= _COOKED_DISHES and not set(noun) & context.made_of:
        return True  # "a mash free from egg", whatever the title calls it
    if not set(noun) <= _called(context):
        return False
    if _AS_BOUGHT.search(claim.passage.text[max(0, claim.start - _BEFORE) : claim.start]):
        return False  # "dry moong has 24 g": the food as bought, and not the khichdi it is in
    # "Lentils" are the red lentils in "Lentil patties", and not the patties.
    here = [{singular(part) for part in food.split("-")} for food in numbers.dish_foods()]
    in_it = any({singular(part) for part in food.split("-")} <= parts for food in claim.foods for parts in here)
    return bool(_THIS & set(words[:lead])) or not in_it


def _called(context: Context) -> set[str]:
    """The words of the dish's title, and each as one of many: "patty" where it is called patties."""
    return {form for word in context.called for form in (word, singular(word))}


def is_this_dish(claim: Claim, context: Context) -> bool:
    """Whether its one subject is the dish by its title, or by the part of it that is no food: "swede mash", "mash"."""
    words = plain(claim.subjects[0]).split() if len(claim.subjects) == 1 else []
    noun = [word for word in words if word not in _LEADING]
    foods = {part for food in claim.foods for part in food.split("-")}
    if not context.called:
        return False
    if f"about {UNNAMED}" in claim.steps:
        return True  # "Leek bowl. For babies from 7 months.": the age is the dish's, not the leek's
    # A "curry" is a food as well; where it is what the title calls the dish and not among the foods, it is this one.
    # "Salmon" in "Salmon mash" is the fish.
    named = context.head in noun or bool(_THIS & set(words)) or not set(noun) <= foods
    of_title = named and set(noun) <= _called(context) and not set(noun) <= foods & context.made_of
    return claim.of_dish or (not noun and bool(words)) or of_title


def _held_against(claim: Claim) -> bool:
    """Whether the foods of an amount are only what it is held against: "eleven grams, more than in milk"."""
    behind = plain(claim.passage.text[claim.end : claim.end + _THAN_REACH])
    _, than, rest = behind.partition(" than ")
    quote = plain(claim.quote)
    names = [plain(subject) for subject in claim.subjects]
    return bool(than and names) and all(name in f" {rest}" and name not in quote for name in names)


_THAN_REACH = 80


def foods_of(claim: Claim, numbers: Numbers, context: Context) -> list[str]:
    """The claim's foods that the food table knows, in order; none where its subject is another food that it does not
    know: "cashew milk" is no milk, and "peanut yoghurt" not plain yoghurt."""
    found: list[str] = []
    if any(_another(plain(text).split(), claim, numbers, context) for text in claim.subjects):
        return found
    for food in (*claim.foods, *(slug(text) for text in claim.subjects)):
        for name in (food, singular(food)):
            known = known_as(name.replace("-", " "), numbers, context)
            if known and known not in found:
                found.append(known)
                break
    return found


_IN_NAME_ONLY = frozenset("vegan plant nut dairy-free meat-free imitation".split())
"""What makes another food of the one named behind it: "plant milk", "vegan cheese"."""


def _another(name: list[str], claim: Claim, numbers: Numbers, context: Context) -> bool:
    """Whether a name that the table does not know has another food before the one that was found in it."""
    if len(name) < 2 or any(
        known_as(" ".join(said), numbers, context) for said in (name, [*name[:-1], singular(name[-1])])
    ):
        return False
    parts = {part for food in claim.foods for part in food.split("-")} | {"milk"}  # "whole milk yoghurt"
    before = [word for word in name[:-1] if not {word, singular(word)} & parts]
    return bool(claim.foods) and any(
        word in _IN_NAME_ONLY or known_as(singular(word), numbers, context) for word in before
    )
