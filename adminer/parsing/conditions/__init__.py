"""Printed conditions as whole statements, and the dates an advert gives."""
