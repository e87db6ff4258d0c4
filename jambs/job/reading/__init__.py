"""From text to a job: files, tables, names looked up, and every complaint in one go."""
