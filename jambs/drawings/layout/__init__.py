"""Where everything of a view goes on paper: rows, columns, leaders, pages."""
