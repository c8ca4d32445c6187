"""The catalogue, hardware sets, cost."""
