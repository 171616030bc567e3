"""The nouns of the house: frozen, typed, without files, network or printing."""
