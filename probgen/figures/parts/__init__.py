"""Parts that drawings are made of, each drawn by itself."""
