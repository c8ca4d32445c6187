"""What is in a file: workbooks read into plain values and written from them, one file a format. No query, no verb."""
