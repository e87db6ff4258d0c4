"""Window extension jamb and trim detailing for thick walls."""

__version__ = "0.1.0"
