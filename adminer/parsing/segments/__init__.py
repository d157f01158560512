"""The stretches of an advert that can name what a price is for."""
