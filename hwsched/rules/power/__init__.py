"""Rules of the discipline power, one a file."""
