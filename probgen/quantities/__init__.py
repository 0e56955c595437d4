"""Numbers with units: expression trees, rounding, and how quantities are printed."""
