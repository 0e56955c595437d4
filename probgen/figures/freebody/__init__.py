"""Free-body diagrams."""
