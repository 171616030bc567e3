"""What was found, for people at a terminal and for programs."""
