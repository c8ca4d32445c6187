"""What the program tells of itself: its log, reports of its own failures, and text made safe to be shown.

Here belongs what both front doors need when something goes wrong. What went wrong, each floor says itself.
"""
