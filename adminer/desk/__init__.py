"""The local web page where a person checks and corrects."""
