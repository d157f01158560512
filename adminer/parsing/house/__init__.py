"""Who placed an advert, and where: the signature, the address, the town."""
