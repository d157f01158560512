"""Picture in; cleaned picture, adverts, blocks and type sizes out."""
