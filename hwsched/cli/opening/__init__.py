"""What one opening gets: its parts, its place, its holes."""
