"""Rules of the discipline placement, one a file."""
