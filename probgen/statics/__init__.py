"""The physics: bodies, forces and supports; the plan of a solution, its evaluation, its proof."""
