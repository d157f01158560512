"""Sets and lists of pieces: what a set consists of, and the offers that ask no money."""
