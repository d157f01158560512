"""The print shop of the demo corpus: invented adverts in, damaged scans with their exact truth out."""
