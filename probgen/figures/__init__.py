"""The figures room: a system with the numbers of one draw becomes a drawing on paper."""
