"""The rules of reading: every name with its area, its level, what is wrong and why it matters."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.model.finding import Area, Finding, Level, Related, Remedy
from spoonproof.model.record import dataclass
from spoonproof.model.text import Document, Span


@dataclass(frozen=True, slots=True)
class Fault:
    """One way in which a file can't be read as meant. ``wrong`` names it, ``why`` says what it does to the reader."""

    name: str
    area: Area
    level: Level
    wrong: str
    why: str


def fault(
    rule: str,
    document: Document,
    span: Span,
    message: str,
    remedy: Remedy | str | None = None,
    *,
    level: Level | None = None,
    related: tuple[Related, ...] = (),
) -> Finding:
    """A finding of a reading rule. ``rule`` must be in ``FAULTS`` (KeyError is a fault of ours)."""
    entry = FAULTS[rule]
    if isinstance(remedy, str):
        remedy = Remedy(remedy) if remedy else None
    return Finding(rule, entry.area, level or entry.level, message, document, span, related=related, remedy=remedy)


def quoted(text: str, most: int = 60) -> str:
    """Words of a person's file as a message quotes them: short, and with nothing in them that a terminal obeys."""
    if len(text) > most:
        text = text[: most - 1] + "…"
    text = "".join(char if char.isprintable() else " " if char in "\r\n\t" else f"U+{ord(char):04X}" for char in text)
    return f"“{text}”"


def all_faults() -> Mapping[str, Fault]:
    """Every rule of reading by name."""
    return FAULTS


def _table(*rows: tuple[str, Area, Level, str, str]) -> Mapping[str, Fault]:
    """The rules of reading by their names, of which no two are the same."""
    by_name = {row[0]: Fault(*row) for row in rows}
    assert len(by_name) == len(rows), "two reading rules of one name"
    return by_name


FAULTS: Mapping[str, Fault] = _table(
    # Files and characters
    ("file-unreadable", "page", "error", "A file can't be read",
     "What can't be read is not checked, and silence would look like a clean file."),
    ("not-a-file", "page", "error", "A folder, pipe or device stands where a file should",
     "Reading it could wait for ever or never end."),
    ("link-out-of-channel", "page", "error", "A link leads out of the channel's folder",
     "What a channel publishes comes from its own folder, so that no stranger's file gets on the page."),
    ("file-too-large", "page", "error", "A file is larger than anybody writes",
     "It is not what it should be, and reading it would stop everything else."),
    ("empty-file", "page", "error", "A file holds nothing",
     "A save that went wrong looks like this."),
    ("not-utf-8", "page", "error", "A file is not UTF-8 text",
     "Guessing the encoding would print wrong letters and hide words from the checks."),
    ("byte-order-mark", "page", "note", "A file starts with a byte order mark",
     "Some programs show it as three odd letters."),
    ("control-character", "page", "error", "A control character stands in the text",
     "It is invisible, breaks pages and captions, and can play tricks on a terminal."),
    ("hidden-character", "page", "warning", "An invisible character stands in the text",
     "It can split a food's name so that its allergen is not seen, or show words in another order."),
    ("confusable-character", "page", "warning", "A letter of another script stands among Latin ones",
     "The word looks right and is not found, neither by readers who search nor by our checks."),
    ("mixed-line-endings", "page", "warning", "A file has two kinds of line ends",
     "Editors count its lines differently, and every save changes lines nobody touched."),
    ("line-too-long", "page", "error", "A line is longer than anybody writes",
     "It is not what it should be, and slows every tool that reads it."),
    # The head of a recipe and YAML
    ("front-matter-missing", "page", "error", "A recipe does not start with its head",
     "Without the head between two lines of --- there are no foods, no steps and no age to check."),
    ("front-matter-not-closed", "page", "error", "The head of a recipe never ends",
     "Where the second --- is missing, story and recipe can't be told apart."),
    ("front-matter-too-long", "page", "error", "The head of a recipe is longer than anybody writes",
     "The closing --- is probably missing or in the wrong place."),
    ("front-matter-not-a-mapping", "page", "error", "The head is not made of keys and values",
     "Nothing can be found in it by name."),
    ("yaml-syntax", "page", "error", "The structure of the file can't be read",
     "From here on it is not clear what belongs to what, so nothing of it is used."),
    ("tab-indentation", "page", "error", "A line is indented with a tab",
     "YAML allows only spaces there, because tabs look different everywhere."),
    ("duplicate-key", "page", "error", "A key is written twice",
     "Only one of the two can count, and many programs silently take the last."),
    ("alias-not-allowed", "page", "error", "An alias or anchor is used",
     "A text that starts with * or & needs quotation marks; copying parts by alias can make a small file explode."),
    ("yaml-tag-not-allowed", "page", "error", "A tag is used",
     "A text that starts with ! needs quotation marks; tags could ask for code to run, so none is obeyed."),
    ("second-document", "page", "error", "A second document starts in the file",
     "One file holds one thing; what follows would be lost."),
    ("nested-too-deep", "page", "error", "Brackets or indents nest deeper than anybody writes",
     "It is not what it should be, and could stop the program."),
    ("too-many-values", "page", "error", "A file holds more values than anybody writes",
     "It is not what it should be, and would slow everything else."),
    ("list-too-long", "page", "error", "A list is longer than anybody writes",
     "It is not what it should be, and would slow everything else."),
    ("value-too-long", "page", "error", "A single value is longer than anybody writes",
     "A quotation mark or an indent is probably wrong."),
    ("key-not-text", "page", "error", "A key is not a word",
     "Keys are names; a number, a list or nothing can't be looked up."),
    # Values
    ("unknown-key", "page", "error", "A key is not known",
     "What stands under a mistyped key is not read at all, allergens included."),
    ("missing-key", "page", "error", "A key that is needed is not there",
     "Without it the rest can't be checked."),
    ("empty-value", "page", "error", "A key has no value",
     "It looks as if something was to follow."),
    ("wrong-type", "page", "error", "A value is of the wrong kind",
     "It can't be understood as what its key asks for."),
    ("not-in-list", "page", "error", "A word is not one of those that are known here",
     "It would be silently without effect."),
    ("ambiguous-number", "page", "error", "A number can be read in two ways",
     "1,500 is one and a half in Lyon and fifteen hundred in Leeds; a baby's bowl is no place to guess."),
    ("number-out-of-range", "page", "error", "A number is too small or too large to be meant",
     "It is a slip of the keyboard, and everything computed from it would be wrong."),
    ("not-a-date", "page", "error", "A date does not exist or is not written year-month-day",
     "Due dates and corrections hang on it."),
    ("unsafe-slug", "page", "error", "A name can't be used as an address",
     "The page's file is named by it; all but small letters, digits and hyphens breaks somewhere."),
    ("duplicate-id", "page", "error", "Two recipes have one name",
     "Only one page can stand at an address, and the other would be lost."),
    ("unsafe-path", "page", "error", "A file name leads out of its folder",
     "Pictures and captions are taken from the channel's own folders only."),
    ("unsafe-link", "page", "error", "A link has an address that could run something",
     "Only web, mail and relative addresses are put on the page."),
    ("reversed-range", "page", "error", "A range runs backwards",
     "Its two ends were swapped, or one of them is a slip."),
    ("policy-unknown", "baby", "error", "A policy is chosen that nobody has",
     "It looks as if it changed what holds for the baby, and changes nothing."),
    # A channel's own tables
    ("own-table-unknown", "page", "error", "A table or column of the channel is not known",
     "It looks as if it changed something, and is not read at all."),
    ("own-table-not-read", "page", "error", "A table of the channel can't be read",
     "Its rows are left out, and ours stand in their place."),
    ("source-address", "page", "error", "The address of a source can't be used as it is",
     "A reader follows it to see for herself; it must lead there, safely and without anybody's password."),
    ("own-row-without-reason", "baby", "error", "A row that guards the baby is replaced without a reason",
     "Whoever reads the page should see where the channel goes its own way, and why."),
    # Marks
    ("leave-without-reason", "words", "error", "A statement is left unjudged without a reason",
     "Whoever reads the file later must see why it stands."),
    ("leave-marks-nothing", "words", "warning", "A mark to leave a statement stands before nothing",
     "It does not cover what it was meant to cover, or is left over."),
    ("comment-not-closed", "page", "error", "A comment in the story never ends",
     "All that follows it is neither shown nor checked."),
    # Files of speech
    ("cue-not-read", "film", "warning", "A cue of a caption file can't be read",
     "Nobody can say at which moment of the film its words are said."),
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
