"""What a family tells of itself claims nothing of a food; what is said of children at large beside it does."""

from __future__ import annotations

from finding_kit import claims

from tests.each import each


@each(
    "text",
    [
        "It turns out he's badly allergic to sesame.",
        "Ottilie tested positive to being allergic to sesame, hazelnuts and cod.",
        "She was the only girl in the playgroup allergic to milk.",
        "We learned of his sesame allergies on a Tuesday.",
        "My nephew had a mild reaction to walnut and none to almond.",
        "By the spring he had begun to show signs of a milk allergy.",
        "The blood test says he is allergic to walnut.",
        "At nine months we began the introduction of sesame.",
        "In this post we will walk you through parsnip purees for babies.",
        "I wanted her to get more iron and zinc at supper.",
        "Bread, carbs, satsumas, no crisps.",
        "Since Ottilie turned 6 months, we have cooked her a parsnip every day.",
        "Now that my niece has turned seven months, she eats what we eat.",
        "She was bottle fed until 23 weeks, and then we began with porridge.",
        "I believe she has been ready for weaning for weeks.",
        "I fancied something both quick and nourishing.",
        "One of them was allergic to plums for three years, and still won't eat soft fruit.",
        "Ottilie was badly allergic to sesame back then.",
        "She can't have milk or walnuts, and she is proud of her allergies.",
        "For our picnic, nut free had to be the rule.",
        "For children with sesame and walnut allergies, a picnic takes some planning.",
        "It is hard to ensure that a café's dishes are allergen-free.",
        "What she likes best at nursery is learning about nutrition.",
        "I look forward to the fruit, greens and protein we all share.",
        "Our boy has been eating solid food for six months now.",
        "I'm lucky that I could stick to exclusive breastfeeding for the first six months of her life.",
        "I could tell that Ottilie was probably ready to eat solids.",
        "After one bad allergic reaction to some oat milk we saw a doctor.",
        "There are many theories as to what causes allergies.",
        "The sesame allergy was more of a puzzle.",
        "None of our cousins has a walnut allergy.",
        "There is a sesame and walnut allergy in her class.",
        "We made the whole picnic sesame-free.",
        "Parents are asked to make sure they're “wheat, nut, and egg-free”.",
        "I look for suppers able to please my fussy little eater.",
        "She has no time to go and buy gluten-free, egg-free buns.",
        "He had the treat from his food-allergy box.",
        "We found out about the walnut allergy on his birthday.",
        "For us the sesame reactions began at a wedding, and I still shudder.",
        "After years of allergen lists, Ottilie is eating cheese.",
        "She used to react to dairy proteins as a tiny thing.",
        "This was his last rung to outgrow a milk allergy.",
        "With so many schools being nut free, I bake with seeds.",
        "Most cafés we tried had gluten free pasta.",
        "My nephew, the small one, has coeliac disease, as you know.",
        "Thicken it with maize flour if you are wheat or gluten intolerant.",
        "Not every café knows what sesame-free means.",
    ],
)
def test_it_claims_nothing(text: str) -> None:
    assert claims(text) == []


@each(
    ("text", "kind"),
    [
        ("Babies who are allergic to milk should not eat this.", "allergen"),
        ("Many children are allergic to sesame.", "allergen"),
        ("Children with eczema and an egg allergy should avoid peanut at first.", "allergen"),
        ("This cake is gluten-free and egg-free.", "allergen"),
        ("Give one food and wait a day to ensure there is no food allergy.", "allergen"),
        ("I read that the chances of outgrowing a peanut allergy are one in five.", "allergen"),
        ("There is tahini in this, so skip it where a child has a sesame allergy.", "allergen"),
        ("The egg allergy is common in babies with eczema.", "allergen"),
        ("Late weaning causes allergies.", "allergen"),
        ("This bread has gluten.", "allergen"),
        ("Our plum bars are gluten free.", "allergen"),
        ("These egg-free plum muffins are our favourite.", "allergen"),
        ("We love these egg-free plum muffins.", "allergen"),
        ("Our nut-free granola keeps for weeks.", "allergen"),
        ("I made dairy-free pancakes for her.", "allergen"),
        ("Lentils and oats give iron and protein.", "nutrient-content"),
        ("Breastfeed exclusively for the first six months.", "safety-age"),
        ("Babies are ready for solids at six months.", "safety-age"),
        ("Too much fibre ends up harming the gut.", "function"),
        ("Giving sesame early means fewer allergies.", "allergen"),
        ("We introduced sesame at five months to prevent an allergy.", "allergen"),
        ("Once your child has turned one, honey is fine.", "safety-age"),
        ("Once they have turned one, they can have honey.", "safety-age"),
        ("Give no solids before 17 weeks.", "safety-age"),
        ("Prunes are good for fussy eating.", "function"),
        ("I wanted her to get more iron, and lentils are rich in iron.", "nutrient-content"),
        ("The idea is to fit in lentils, which are full of iron.", "nutrient-content"),
        ("These waffles are sugar-free.", "nutrient-content"),
    ],
)
def test_what_is_said_beside_it_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}
