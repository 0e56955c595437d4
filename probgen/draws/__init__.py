"""Which values each student gets, and how they are spread over a class."""
