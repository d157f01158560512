"""The words of an advert: where they stand, the goods they name, the slips of a reader."""
