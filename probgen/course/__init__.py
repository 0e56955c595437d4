"""The course: set file, class list, exam, versions with their codes, and the record of a build."""
