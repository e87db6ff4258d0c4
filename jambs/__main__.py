"""``python -m jambs`` is the same as ``jambs``."""

from jambs.app.start import run

if __name__ == "__main__":
    run("python -m jambs")
