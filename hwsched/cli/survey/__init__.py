"""What is found at the openings."""
