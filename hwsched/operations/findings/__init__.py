"""What rules say, and what people accept of it."""
