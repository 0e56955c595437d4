"""What is handed out: problem sheets and worked keys, and how layouts turn them into LaTeX."""
