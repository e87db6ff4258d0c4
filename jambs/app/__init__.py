"""Where people come in: the command line, and the chain that builds a job."""
