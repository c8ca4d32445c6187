"""Rules of the discipline egress, one a file."""
