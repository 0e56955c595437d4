"""Facts of a working: digits, conventions, the case of one student."""
