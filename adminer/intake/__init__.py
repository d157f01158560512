"""Scan files in, upright pictures with an identity out: decode, guard, rotate, split pages; notes.csv."""
