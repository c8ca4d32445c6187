"""Rules of the discipline battery, one a file."""
