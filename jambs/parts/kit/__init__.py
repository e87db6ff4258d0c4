"""The parts of one opening together: what they leave clear, what lies behind, what may be milled ahead."""
