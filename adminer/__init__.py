"""Turn a file of old adverts into a database of dated, cited offers."""
