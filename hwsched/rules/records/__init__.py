"""Rules of what is on record of an opening, one a file."""
