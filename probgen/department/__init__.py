"""What a department does with its bank: begin it, take templates in, compare, review, release."""
