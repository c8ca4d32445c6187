"""Fitting: builds the fit of one opening with the rules as its constraints."""

from hwsched.fitting.build import alternatives, fit, fit_with_facts

__all__ = ["alternatives", "fit", "fit_with_facts"]
