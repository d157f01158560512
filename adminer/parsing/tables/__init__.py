"""Printed tables, price lists and schedules: what their heads and rows say of their prices."""
