"""``python -m jambs`` is the same as ``jambs``."""

from jambs.app.command_line import main

if __name__ == "__main__":
    main(prog_name="python -m jambs")
