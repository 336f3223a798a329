"""A first look: an invented practice with invented animals, on this machine. Nothing that is delivered imports it."""
