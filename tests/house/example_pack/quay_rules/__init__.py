"""What a shop on a quay adds: a rule, and a part kind."""
