"""What leaves the office, in files: how its documents look."""
