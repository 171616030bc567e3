"""A recipe with nothing wrong in how it is written, for rows that are made and not kept as files."""

RECIPE = """---
title: Leek bowl
ages: 7-9 months
texture: mashed
foods:
  - 200 g leeks, sliced
  - 1 tbsp olive oil
steps:
  - Boil the leeks for 15 minutes.
  - Mash the leeks with the oil.
---
"""
