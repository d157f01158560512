"""What each price is for: one assignment over the whole advert, and the rules that weigh its costs."""
