"""Rules of supplies and their circuits, one a file."""
