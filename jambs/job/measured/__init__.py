"""What was measured on the site: where the tape is held, the table, readings that look like misreadings."""
