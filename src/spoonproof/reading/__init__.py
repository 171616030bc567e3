"""What people write, read into values that know where they stand; nothing is judged here."""
