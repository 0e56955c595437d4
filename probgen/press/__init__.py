"""Many LaTeX documents become many PDFs: cached format, shared TeX runs, split and joined."""
