"""Template and bank files: read, checked and found."""
