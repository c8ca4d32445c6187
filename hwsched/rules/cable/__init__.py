"""Rules of the discipline cable, one a file."""
