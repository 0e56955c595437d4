"""`probgen bank`: its commands, a module each."""
