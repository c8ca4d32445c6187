"""A project as a file or a database: opened, moved to a newer schema, examined, locked, copied, rescued."""
