"""What ``new`` starts from: a channel file and a recipe that check clean and publish as they are."""

CHANNEL = """\
# Whose desk this is, for which markets, in which kitchen. Every key is explained by: spoonproof explain channel
title: {title}
author: {title}
base_url: https://{slug}.example
language: en-GB
measures: UK                 # US, metric, UK, AU: spoons and cups differ
markets: [EU, GB, US]
ages: 6-24 months
paid: editorial              # gifted, affiliate, sponsored, own-product: a recipe may say otherwise
speech: 145 words a minute
kitchen: {{cooks: 1, rings: 2, steamer tiers: 1, blender: 1, oven: 1}}
day: {{from: 09:30, to: 14:30}}
policies: {{new-foods: market}}
baby: {{knows: [], advice: none}}
accepted: []
"""

RECIPE = """\
---
title: {title}
summary: A soft mash, loosened with a little oil.
ages: 7-9 months
texture: mashed
next: {{texture: lumpy, from: 9 months, how: crush it less and leave small soft pieces}}
makes: 6 x 70 g
foods:
  - 300 g floury potatoes, peeled, 1 cm dice
  - 1 medium courgette, 1 cm dice
  - 2 tsp rapeseed oil
steps:
  - Bring 3 cm of water to the boil under the steamer.
  - Steam the potatoes, covered, for 8 minutes.
  - Add the courgette and steam for 14-18 minutes more, until a cube of potato squashes between finger and thumb.
  - Take the lid off and let the steam off for 5 minutes.
  - Mash everything with the oil.
  - Serve it warm.
keeps: fridge 48 h, freezer 1 month
film:
  runs: 90 s
---
<!-- Write over any of this: the summary, the foods, the steps. The story for the page comes here, in place of these
lines, which no reader sees. Then run spoonproof check again. -->
"""
