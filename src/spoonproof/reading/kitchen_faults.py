"""The rules of reading food lines and steps: name, area, level, what is wrong, why it matters."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from spoonproof.model.finding import Edit, Finding, Level, Related, Remedy
from spoonproof.model.text import Document, Span
from spoonproof.reading.faults import FAULTS, Fault, table

FOOD_LINE_CHARACTERS: Final = 400
STEP_CHARACTERS: Final = 2_000
"""The longest food line and step that are read: nobody cooks from longer ones, and reading them takes time."""


def kitchen_fault(
    rule: str,
    document: Document,
    span: Span,
    message: str,
    remedy: str = "",
    *,
    level: Level | None = None,
    edits: tuple[Edit, ...] = (),
    related: tuple[Related, ...] = (),
) -> Finding:
    """A finding of a rule in ``KITCHEN_FAULTS`` (KeyError is a fault of ours)."""
    entry = KITCHEN_FAULTS.get(rule) or FAULTS[rule]
    put_right = Remedy(remedy, edits=edits) if remedy else None
    return Finding(rule, entry.area, level or entry.level, message, document, span, related=related, remedy=put_right)


KITCHEN_FAULTS: Mapping[str, Fault] = table(
    # Amounts
    ("not-a-number", "cooking", "error", "An amount is not a number",
     "Nothing can be weighed or counted by it, and no figure may rest on it."),
    ("digits-not-plain", "cooking", "error", "A number is written with other digits than 0 to 9",
     "They look alike on one screen and different on the next."),
    ("quantity-not-finite", "cooking", "error", "An amount has no end",
     "Every sum it enters would be lost."),
    ("quantity-not-positive", "cooking", "error", "An amount is nothing or less",
     "A food that is listed goes in; a slip of the sign would be taken off the sums."),
    ("quantity-out-of-range", "cooking", "error", "An amount is too small or too large to be meant",
     "It is a slip of the keyboard, and all figures of the dish would follow it."),
    ("range-reversed", "cooking", "error", "A range runs from the larger to the smaller",
     "It may be a mixed number or a slip; both readings give another dish."),
    ("range-not-closed", "cooking", "error", "A range has one end only",
     "The other number is missing, and a guess would be wrong."),
    ("ambiguous-unit", "cooking", "error", "A unit can be read in two ways",
     "T and t differ threefold, an ounce of milk is a weight or a volume."),
    ("unknown-unit", "cooking", "error", "A unit is not known",
     "The amount can't be weighed, and a guess would be wrong."),
    ("unit-not-said", "cooking", "warning", "A number that can only be grams stands without its unit",
     "Nobody counts 200 rashers: it is read as grams, and a reader may take it for something else."),
    ("amounts-disagree", "cooking", "warning", "Two amounts of one food are not the same",
     "A reader takes one, the figures take the other."),
    ("two-amounts", "cooking", "error", "Two amounts that can't be summed stand on one line",
     "Only one of them could count."),
    ("food-missing", "cooking", "error", "An amount without a food",
     "Something goes in that nobody can check."),
    # Foods
    ("unknown-food", "baby", "error", "A food is not in the table",
     "Allergens and hazards hang on the food's record: it is never guessed."),
    ("second-food-on-a-line", "baby", "error", "A line names a second food",
     "Only the first one is looked at: its allergens, hazards and figures, but not those of the second."),
    ("foods-on-one-line", "cooking", "note", "Several foods, each with its amount, share a line",
     "All of them are read; a reader shops and weighs by the line."),
    ("no-food-but-a-tool", "cooking", "note", "A thing of the kitchen stands under foods",
     "The list is what is eaten: it has allergens and figures, and a skewer has none."),
    ("state-not-in-table", "cooking", "warning", "A food is not in the table in the state asked for",
     "Dried, tinned and cooked foods weigh differently; the figures are those of the plain food."),
    ("words-not-understood", "cooking", "warning", "Words of a food line were not understood",
     "What is not understood is not checked."),
    # Steps
    ("food-not-listed", "baby", "warning", "A step uses a food that is not under foods",
     "It is missing from the shopping list, from the allergens and from all figures."),
    ("food-never-used", "cooking", "warning", "A food is listed and no step uses it",
     "A reader is left with it on the board, and the checks don't know how it is cooked."),
    ("which-food", "cooking", "warning", "A step names a food that can be two of the lines",
     "The cook and the checks may take different ones."),
    ("step-not-understood", "cooking", "note", "Nothing could be read out of a step",
     "It is printed as it stands, but no check looks at it."),
    ("step-disagrees", "cooking", "warning", "A step's sentence and the keys beside it disagree",
     "The reader cooks by the sentence, the checks by the keys."),
    ("split-within-a-step", "cooking", "note", "The baby's portion is lifted out in the middle of a step",
     "What comes before it and after it in one step can't be told apart by every check."),
    ("time-not-meant", "cooking", "error", "A time in a step can't be meant or read",
     "Without it nothing says how long the pot stands, whether the food gets soft, or when the dish is done."),
    ("temperatures-disagree", "cooking", "warning", "Two temperatures of one step are not the same",
     "One of them burns or leaves it raw."),
)  # fmt: skip
