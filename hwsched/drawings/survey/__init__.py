"""What is found at the openings: how it is measured."""
