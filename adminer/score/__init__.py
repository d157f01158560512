"""Measure a digitised folder against a truth file, beside baselines."""
