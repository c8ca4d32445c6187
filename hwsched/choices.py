"""Words that people choose from at the command line.

Here, and not beside what they mean, since the help of a verb shows them and must not wait for what does the work; where
the type checker needs them there too, a test holds both together.
"""

SEVERITIES = ("error", "warning", "note")
"""Of findings, worst first."""
BARE_UNITS = ("in", "ft", "mm", "cm", "m")
"""That a number without one can take: the column's, as the header or the person says."""
LENGTH_STYLES = ("fraction", "decimal-inch", "mm")
"""How a project shows its lengths."""
PREFERENCES = ("cost", "holes", "stock", "preferred")
"""What ranks the alternatives of a fit first."""
OPENING_VIEWS = ("inside", "key-side", "detail", "section", "edge", "bores", "template", "exploded")
"""Drawings of an opening."""
ALL_VIEWS = "all"
"""Both faces, edge and section on one sheet."""
DRAWING_LAYERS = ("stands", "new", "holes", "lead", "keep-outs", "dimensions")
"""What of a sheet with all views is shown."""
POWER_VIEWS = ("riser", "wiring", "voltages")
"""Views of what feeds openings: of a building, of an opening (by its mark), of a circuit (as SUPPLY/CIRCUIT)."""
ROLES = {
    "surveyor": "writes down what stands there",
    "specifier": "does everything",
    "storekeeper": "keeps stock and gives out packets",
    "installer": "takes packets out to site",
    "viewer": "changes nothing",
}
"""Of people, each with what it does, to stand after "a surveyor"."""
