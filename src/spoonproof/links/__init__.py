"""Asking the network whether cited pages still stand: only when told to, politely, and never inside the own network."""
