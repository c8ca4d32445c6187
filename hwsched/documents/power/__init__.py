"""What supplies openings with power."""
