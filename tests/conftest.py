"""Let the tests share ``cases.py``."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
