"""Pieces that several rooms put on their pages: fields, tables, drawings, rows of buttons."""
