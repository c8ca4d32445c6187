"""Rules of the discipline survey, one a file."""
