"""What a baby of an age may be given, how, and what must be said about it."""
