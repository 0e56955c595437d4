"""Static-equilibrium problems with own numbers for each student, and keys worked step by step."""

__version__ = "0.2.0"
