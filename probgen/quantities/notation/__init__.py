"""The notations a formula is printed in: one walk of its tree, and LaTeX, plain text, MathML."""
