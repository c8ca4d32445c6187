"""Rules of the discipline holes, one a file."""
