"""What is said and returned after Ctrl-C."""

from __future__ import annotations

INTERRUPTED = 130
"""Exit code after Ctrl-C: 128 and the number of the signal, as shells have it."""
STOPPED = "Stopped by Ctrl-C. Nothing is half written: each folder of papers is as it was, or whole and new."
