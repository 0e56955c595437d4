"""The course: assignment file, class list, exam, versions with their codes, record of a build."""
