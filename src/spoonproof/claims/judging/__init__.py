"""Judging a claim, step by step: what it asks, what is known, whether it is true, what the law answers, what to do."""
