"""Charts and pages of pictures."""
