"""Kinds of evidence for the date of an advert; each module finds its clues and gives their likelihood by month."""
