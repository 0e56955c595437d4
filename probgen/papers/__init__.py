"""Pages, lists and answers of a class, and the chunks they are printed in.

What is printed once each is a `Version` (`course.version`): a student's own paper, or a letter of
an exam.  `page` makes its sheet and key, `typesetter` writes them in the house's layouts, `chunk`
does so for several; the piles are joined in the order the papers are dealt (`course.exam`,
`seating`).
"""
