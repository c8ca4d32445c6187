"""Rules of the discipline catalogue and stock, one a file."""
