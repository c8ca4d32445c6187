"""What made a result: a hash of the code, the tables and the packages from outside that a fit follows from.

Nobody raises it by hand. It is computed from the source as the interpreter understands it, so a comment, a docstring, a
blank line or a moved line changes nothing, and every constant and operator does. Here belongs the hashing; who compares
stands in `operations`.
"""

from hwsched.fingerprint.engine import FINDINGS, FITS, Engine, ProgramFolders, engine, engine_of

__all__ = ["FINDINGS", "FITS", "Engine", "ProgramFolders", "engine", "engine_of"]
