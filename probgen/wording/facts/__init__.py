"""What a telling has to say: every fact there are words for, and none of the words."""
