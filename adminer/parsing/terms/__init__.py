"""Printed terms of trade, and the spaCy pipeline that marks them and the pieces."""
