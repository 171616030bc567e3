"""Spoonproof: a recipe desk for people who cook for babies and publish it."""

__version__ = "0.1.0"
