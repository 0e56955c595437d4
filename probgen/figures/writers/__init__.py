"""A drawing written as a LaTeX picture or as SVG."""
