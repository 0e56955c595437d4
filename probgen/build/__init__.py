"""A class built: workers, delivery, joined PDFs."""
