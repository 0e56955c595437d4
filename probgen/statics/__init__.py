"""The physics: bodies, forces and supports; the plan of a solution, its evaluation, its proof.

The way is system -> plan -> solution -> proof.  `balances` writes every balance of every body and
group, `search` finds the cheapest order of steps (single equations first, several at once only
where nothing else leads on, a pivot off the body from `off_body_pivot` where that helps),
`solve_for` and `algebra` solve one equation or a few, `derivation` puts the steps together, `plan`
adds what is made of them and a branch for each limit.

`rerun`, the one walk of a plan's lines, tells what follows from the data and from what a person
states; `solution` is that with nothing stated: it evaluates the steps with numpy, one draw or a
class at once; no symbolic work is done for a student.  `proof` asks `numeric_equations` and
`cross_check`, which know geometry and vectors but no plan.
"""
