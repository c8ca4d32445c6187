"""What the warehouse does."""
