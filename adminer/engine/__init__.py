"""Run the stages over many scans in supervised processes."""
