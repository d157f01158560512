"""A small learned reader of fractions: the recognising network knows hardly one, see README.md of this folder."""
