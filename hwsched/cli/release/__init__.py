"""What goes out: documents, packets, revisions, files."""
