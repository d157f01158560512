"""Offers from prices and items, with line and maker."""
