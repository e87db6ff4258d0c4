"""The placement comparison as a record: every figure once, its exact value, its unit and its text."""
