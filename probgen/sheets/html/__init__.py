"""Documents written as one file of HTML, with figures as SVG and formulas as MathML."""
