"""The authority files of lines, makers, retailers and pieces, and the matching of printed names."""
