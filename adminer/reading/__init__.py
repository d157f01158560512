"""Blocks in, words out: Tesseract, the display reader, their merge, the price numerals."""
