"""Rules of the discipline lock and cylinder, one a file."""
