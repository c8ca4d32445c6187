"""Blocks and drawings brought to PDF, XLSX, SVG and plain primitives for the screen.

Nothing is imported here: a front door that only needs file names or looks must not load the PDF library.
"""
