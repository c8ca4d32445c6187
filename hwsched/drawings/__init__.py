"""Geometry of fits as neutral drawings: elevations, edge view, section, bore detail, true-size template.

Everything is mm of the thing drawn; paper, screen and colours belong to `hwsched.render` and above.
"""
