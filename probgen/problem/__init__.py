"""One problem worked: its plan, its draws, its figures, its checks."""
