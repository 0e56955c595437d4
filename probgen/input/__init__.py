"""What is read from outside, on the ground: files, tables, faults told with their mend."""
