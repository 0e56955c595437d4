"""Marking: from what students wrote to marks, with what went wrong named."""
