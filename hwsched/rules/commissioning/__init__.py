"""Rules of the discipline commissioning, one a file."""
