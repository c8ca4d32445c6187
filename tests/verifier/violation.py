"""What a judge yields."""

Found = tuple[str, dict[str, float], str]
"""Family, numbers, and the sentence from which it follows."""
