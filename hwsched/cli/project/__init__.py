"""The project as a whole: people, history, settings."""
