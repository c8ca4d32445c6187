"""The one way by which rows change: change sets with their chain, conflicts, taking back, and reading what was done."""
