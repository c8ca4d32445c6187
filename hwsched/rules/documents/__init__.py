"""Rules of the discipline documents, one a file."""
