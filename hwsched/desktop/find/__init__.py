"""Find anything: what a few words may mean, and the field in which they are typed."""
