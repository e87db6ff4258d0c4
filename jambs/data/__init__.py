"""Data that comes with the package: catalogs, tables, fonts; every row with its source."""
