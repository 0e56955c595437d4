"""A system measured: where its points lie, which way its lines run."""
