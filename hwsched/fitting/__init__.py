"""Fitting: builds the fit of one opening with the rules as its constraints."""

from hwsched.fitting.build import alternatives, fit

__all__ = ["alternatives", "fit"]
