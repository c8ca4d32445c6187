"""Fitting: builds the fit of one opening with the rules as its constraints."""

from hwsched.fitting.build import alternatives, fit, fit_with_facts
from hwsched.fitting.slot_memory import SlotMemory

__all__ = ["SlotMemory", "alternatives", "fit", "fit_with_facts"]
