"""Which amounts are prices: of what role, on which terms, under which head of a column."""
