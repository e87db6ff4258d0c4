"""Files that a machine cuts by: parts and sheets at true size, each kind of work on a layer of its own."""
