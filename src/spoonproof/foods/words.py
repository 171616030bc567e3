"""The words that name foods: broken at spaces and hyphens, plurals brought home, spellings made one."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

from spoonproof.model.plural import singular
from spoonproof.model.record import NamedTuple

# Letters that hold no accent to take away, as cooks write them without the key for them; apostrophes go.
_LETTERS = str.maketrans({"œ": "oe", "æ": "ae", "ø": "o", "ł": "l", "ß": "ss", "ı": "i", "đ": "d", "’": "", "'": ""})
_DOUBLED = re.compile(r"([bcdfglmnprstz])\1")
_TOKEN = re.compile(r"[^\W_]+(?:['’][^\W_]+)*(?:%)?|&")

# Plurals whose endings mislead, and spellings that differ by country.
_SPELT = {
    "chillies": "chilli",
    "chilies": "chilli",
    "chili": "chilli",
    "chilis": "chilli",
    "chile": "chilli",
    "chiles": "chilli",
    "yogurt": "yoghurt",
    "yogurts": "yoghurt",
    "yoghourt": "yoghurt",
    "ladies": "lady",
    "humous": "hummus",
    "houmous": "hummus",
    "hommus": "hummus",
    "molasses": "molasses",
    "flavored": "flavoured",
    "&": "and",
    "gray": "grey",
    "omelet": "omelette",
    "omelets": "omelette",
    "cookies": "cookie",
    "brownies": "brownie",
    "sulfite": "sulphite",
    "fiber": "fibre",
}
# Words as they are often misspelt, beyond a letter too many or too few of a pair.
_SLIPS = dict(
    slip.split("=")
    for slip in """
    tomatoe=tomato potatoe=potato mangoe=mango avacado=avocado avocadoe=avocado tumeric=turmeric tumerick=turmeric
    cinamin=cinnamon cinnimon=cinnamon corriander=coriander coriandor=coriander cummin=cumin parmesean=parmesan
    parmasan=parmesan chedder=cheddar mozerella=mozzarella mozzerella=mozzarella yoghert=yoghurt yogart=yoghurt
    yougurt=yoghurt youghurt=yoghurt rasberry=raspberry rasberries=raspberry bluberry=blueberry blueberrys=blueberry
    strawberrys=strawberry spagetti=spaghetti spaghetii=spaghetti cauliflour=cauliflower colliflower=cauliflower
    aubergene=aubergine obergine=aubergine courget=courgette lentles=lentil lentels=lentil
    pinapple=pineapple mackeral=mackerel makerel=mackerel samon=salmon sardeens=sardine haddok=haddock prawnes=prawn
    chiken=chicken chickin=chicken minse=mince bacan=bacon sausege=sausage lettice=lettuce
    parsely=parsley parslee=parsley garlick=garlic vinager=vinegar vinigar=vinegar
    ketchep=ketchup suger=sugar shuger=sugar hunny=honey honny=honey surup=syrup sirup=syrup almound=almond
    cashue=cashew peenut=peanut raisons=raisin sultannas=sultana
    quinoua=quinoa quinua=quinoa cuscus=couscous bulger=bulgur buckweat=buckwheat semolena=semolina oatmeel=oatmeal
    cardamon=cardamom beatroot=beetroot brocoly=broccoli spinich=spinach celary=celery
    """.split()
)
# Two words that are written as one, and the reverse: always the left form inside the table.
_JOINED = {
    ("chick", "pea"): "chickpea",
    ("sweet", "corn"): "sweetcorn",
    ("whole", "wheat"): "wholewheat",
    ("whole", "meal"): "wholemeal",
    ("whole", "grain"): "wholegrain",
    ("corn", "flour"): "cornflour",
    ("corn", "starch"): "cornstarch",
    ("corn", "meal"): "cornmeal",
    ("egg", "plant"): "eggplant",
    ("soy", "bean"): "soybean",
    ("butter", "nut"): "butternut",
    ("water", "melon"): "watermelon",
    ("passion", "fruit"): "passionfruit",
    ("star", "fruit"): "starfruit",
    ("beet", "root"): "beetroot",
    ("black", "berry"): "blackberry",
    ("blue", "berry"): "blueberry",
    ("lemon", "grass"): "lemongrass",
    ("porridge", "oat"): "porridgeoat",
    ("ground", "nut"): "groundnut",
    ("lin", "seed"): "linseed",
    ("flax", "seed"): "flaxseed",
    ("cous", "cous"): "couscous",
    ("mange", "tout"): "mangetout",
    ("crust", "less"): "crustless",
    ("tri", "colour"): "tricolour",
    ("tri", "color"): "tricolour",
}


class Token(NamedTuple):
    """One word of a text in its plain form, with where it stands."""

    word: str
    start: int
    end: int


@lru_cache(maxsize=8192)
def plain(word: str) -> str:
    """A single word in lower case, without accents or apostrophes, singular; a doubled consonant once, for that is
    where cooks slip ("brocolli", "mozarella"), and no two foods of the table are told apart by it."""
    text = _one_spelling(word)
    return (
        _DOUBLED.sub(r"\1", text) if len(text) > 3 and text not in ("full", "till") else text
    )  # "eg" is no egg, "full" no ful


def _one_spelling(word: str) -> str:
    text = word.lower()
    if text.isascii():
        text = text.replace("'", "")
    else:
        text = "".join(char for char in unicodedata.normalize("NFKD", text) if not unicodedata.combining(char))
        text = text.translate(_LETTERS)
    return _SPELT.get(text) or _SLIPS.get(text) or singular(text)


_PAIRS = {tuple(map(plain, pair)): plain(one) for pair, one in _JOINED.items()}


def tokens(text: str) -> list[Token]:
    """The words of ``text``, pairs that are also written as one word joined."""
    found = [Token(plain(match[0]), match.start(), match.end()) for match in _TOKEN.finditer(text)]
    if len(found) < 2:
        return found
    joined: list[Token] = []
    skip = False
    for here, after in zip(found, [*found[1:], None], strict=True):
        if skip:
            skip = False
            continue
        one = _PAIRS.get((here.word, after.word)) if after is not None else None
        if one is not None and after is not None and after.start - here.end == 1:
            joined.append(Token(one, here.start, after.end))
            skip = True
        else:
            joined.append(here)
    return joined


def key(name: str) -> tuple[str, ...]:
    """What two spellings of one name share."""
    return tuple(token.word for token in tokens(name))


def _words(text: str) -> frozenset[str]:
    return frozenset(plain(word) for word in text.split())


# Words before a food's name that leave it the same food: size, quality, freshness, and what the cook does to it.
BEFORE = _words(
    """
    a an the of some your my our good best quality nice lovely favourite local british english seasonal organic free
    range fresh freshly ripe overripe very really extra tiny small little medium large big huge fat heaped level rounded
    scant generous baby young new tender raw uncooked plain natural whole firm soft sweet juicy crisp
    peeled unpeeled cored stoned pitted deseeded seedless seeded topped tailed trimmed podded shelled hulled skinned
    skinless boneless boned skin bone on off in washed rinsed scrubbed cleaned drained strained squeezed patted dry
    chopped snipped diced cubed sliced grated shredded crushed mashed pureed puree torn flaked crumbled halved quartered
    minced finely coarsely roughly thinly thickly lightly well fine coarse thick thin long short cut split
    cooked boiled steamed roasted roast baked poached grilled fried microwaved mashed blended leftover cold warm hot
    cooled chilled softened melted beaten whisked sifted toasted soaked overnight defrosted thawed frozen
    full fat hard unsalted unsweetened salt sugar free no added without homemade home made shop bought ready to use
    pure packed english irish scottish dutch refrigerated unbleached undyed creamy lean pressed rindless crustless
    spiralised spiralized julienned unfiltered
    frenched tricolour tricolor pasteurised pasteurized vine ripened sustainable msc wild caught line farmed smooth
    sashimi sushi grade unroasted meaty winter autumn bunched unpeeled mature hand picked
    de di du del d filet filete lata diente gousse spicchio frische frischer frisches gehackte gehackter geriebene
    gekochte gemahlene geröstete geschälte ganze reife kleine große verse gekookte geraspte färska świeże świeży
    mild piece slice bunch handful pinch tin can pack jar bag stick stalk head clove sprig knob floret
    """
) - {"salt", "sugar", "dry", "sweet", "wild", "whole", "home", "split", "roast"} | {"whole", "sweet", "roast"}
# Where it comes from, what colour it is: of what grows these make no other food ("Egyptian rice", "purple carrots").
ORIGINS = _words(
    """
    japanese italian spanish greek french thai korean turkish egyptian indian american german polish moroccan persian
    african welsh scotch cornish kentish jersey scandinavian norwegian danish puy castelluccio puglian sicilian
    red yellow purple orange white brown golden black blue pink dark light pale deep round oval flat curly
    swedish swiss dutch belgian portuguese mexican peruvian jamaican nigerian persian lebanese syrian ukrainian
    hungarian chinese vietnamese filipino australian californian
    """
)
GROWN = frozenset(("vegetable", "fruit", "herb", "grain", "pulse"))
# Groups whose foods stay what they are whoever makes them; a maker's milk, cheese or sausage may be of soya.
MADE_BY_MANY = GROWN | {"sauce", "sweet", "spice", "fish", "seasoning"}
# Words after a food's name that name a part or a shape of the same food.
AFTER = _words(
    """
    frond fillet leaf floret spear stalk stick piece chunk cube dice flesh kernel segment wedge half halves slice strip
    baton clove bulb root head sprig bit loin steak ring coin puree mash only finely roughly coarsely thinly thickly
    chopped diced cubed sliced grated shredded crushed minced torn crumbled halved quartered peeled deseeded trimmed
    topped tailed scrubbed washed skinned boned cored stoned pitted destemmed mashed cooked boiled steamed roasted
    ribbon sheet joint roasting pre small medium large big tiny
    drained rinsed pureed squeezed defrosted thawed melted softened beaten toasted soaked whole and grain rasher
    """
)
# What is cut in fingers; those of meat or fish are bought in crumbs.
FINGERS = _words("finger")
IN_FINGERS = GROWN | {"cheese"}
# What other kitchens say behind a food's name of how it is: "uvas verdes", "ricotta fresca", "miele millefiori".
SAID_AFTER = _words(
    """
    fresco fresca fresche frais fraîche fraîches fresque frisch maduro madura mûr mûre entero entera entier
    entière intero picado picada rallado rallada molido molida torrado torrada tostado tostada tostati grattugiato
    râpé haché hachée cocido cocida cozido cozida cuit cuite verde vert verte verdi negro negra nero nera noir noire
    rojo roja rosso rossa rouge blanco blanca bianco bianca blanc blanche natural naturel gemahlen gehackt gerieben
    gekocht biologique ecológico millefiori świeży świeże pelado pelada crudo cruda cru crue
    grillé grillée torréfié torréfiée tostato tostata tostate sgusciato sgusciate mediano mediana grande pequeño
    pequeña semolato
    """
)
# The leaf of a fruit tree is no fruit ("lemon leaves").
NOT_OF_FRUIT = _words("leaf")
# Here the name of the food has ended: what follows says how it is packed or what it is for.
STOP = _words("in with from for to plus into until cut about such at as on per each if") | {"e", "g", "i"}
# After "of" the name has ended only where it is left open which one: "milk of choice", but "cream of wheat".
LEFT_OPEN = _words("choice your any each")
# Words that only say once more what kind of food it is: "ricotta cheese", "cumin powder", "sourdough toast".
SAYS_KIND = {
    "baked": SAID_AFTER | _words("bread toast"),
    "cheese": SAID_AFTER | _words("cheese"),
    "spice": SAID_AFTER | _words("powder"),
    "fish": SAID_AFTER | _words("fish flake"),
}
# Words that make another food of what they stand by, whatever else we know.
CHANGES = _words(
    """dried dry tinned canned smoked cured salted sweetened candied pickled fermented instant powdered flavoured vegan
    creamed powder juice oil sauce jam vinegar drink milk butter flour bread soup cake syrup wine paste"""
)
# Single words that are often no food in running text (DOUBTFUL), and the neighbours that show it.
NOT_AFTER = _words(
    """to should will can could may must until it they them and then cube cubes piece pieces gently easily not we you i
    who never"""
)
A_THING = _words("the a some of your this that more")
NOT_BEFORE = _words("between it them with flat easily the against a under down out through up together")
DOUBTFUL = _words(
    "squash date spread wrap roll dock chip orange lime port ale cream season mint rocket stock press trout"
)
