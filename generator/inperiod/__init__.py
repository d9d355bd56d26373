"""In Period: a dated-source reference catalogue of dress, built into a static site."""

__version__ = "0.1.0"
