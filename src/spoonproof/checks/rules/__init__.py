"""One rule a module, named by the bad pattern."""
