"""Pages, lists and answers of a class, and the chunks they are printed in."""
