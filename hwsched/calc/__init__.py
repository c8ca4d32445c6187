"""Pure calculations: plain values in, plain values out; no database, no file, no screen."""
