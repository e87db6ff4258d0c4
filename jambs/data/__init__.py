"""Data that comes with the package: catalogues, tables, fonts; every row with its source."""
