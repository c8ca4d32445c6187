"""A verifier written apart from the program.

It finds openings that are called fitted and cannot be installed or powered as printed, and openings that are refused
although a combination and a place exist. It imports nothing of hwsched. What it knows of an opening are the cells of
workbooks that it wrote itself; what it knows of the program is what `hwsched opening show --json` prints.
"""
