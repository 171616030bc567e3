"""What is in a dish: foods, their weights, what cooking does to them, and how sure the sums are."""
