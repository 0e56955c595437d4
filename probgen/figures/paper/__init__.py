"""A drawing: its canvas, what is on it, where labels find room."""
