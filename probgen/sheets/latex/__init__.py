"""Documents written in LaTeX: what somebody typed escaped, blocks as commands, layouts as pages."""
