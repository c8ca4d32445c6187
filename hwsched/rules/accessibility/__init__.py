"""Rules of the discipline accessibility, one a file."""
