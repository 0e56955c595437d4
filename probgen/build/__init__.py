"""A class built: workers, kept chunks, joined PDFs, delivery.

`build` makes a `Record` from the assignment file (seed, class, frozen templates, draws) and the
record before it, and everything printed from the record.  A chunk of students is one task for one
process, sheets and keys together; its size follows from its printing's alone, so that the number of
workers, or a Dask cluster in their place, changes no byte.  `delivery` keeps finished chunks in a
working folder beside the target (`chunk_store`, `lock`, `folder`), which becomes the target by one
rename; a stopped build goes on from what is kept.
"""
