"""Planning of supplies, circuits' runs and wires in one search: what is asked, legs, exact and bounded search."""
