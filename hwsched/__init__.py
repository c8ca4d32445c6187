"""Electronic locking for doors that already stand: survey, fit, prove, schedule, install."""

__version__ = "0.1.0"
