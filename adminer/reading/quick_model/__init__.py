"""The recognising network in small numbers, for the first reading: see README.md of this folder."""
