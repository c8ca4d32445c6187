"""How work is run off the screen's thread, what came of it, and what is said where it failed."""
