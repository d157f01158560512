"""Printed amounts of any coinage, from their characters alone."""
