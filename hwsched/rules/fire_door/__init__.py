"""Rules of the discipline fire door, one a file."""
