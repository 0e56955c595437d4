"""What acts inside a body, drawn along it."""
