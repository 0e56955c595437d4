"""The situation drawn: bodies, supports, lines, loads."""
