"""Adverts of shops that sell everything, each set by a printer of other habits: what the weights of items are learned from."""
