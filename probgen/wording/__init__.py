"""A solution told in the course's own method: steps, sentences, equations."""
