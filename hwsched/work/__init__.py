"""The plan of the work: the ordered steps by which a fit is built into its opening.

Here belongs what is done, in which order, with what in the hand, and what is looked at and read. How it is put on paper
is said by the documents.
"""
