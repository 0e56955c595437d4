"""What students do wrong, as variants of the model."""
