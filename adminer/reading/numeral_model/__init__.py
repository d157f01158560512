"""A small network that reads price numerals and nothing else, and the rule for when its answer is taken."""
