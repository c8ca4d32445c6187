"""What feeds an opening: its devices, its runs over the hinge and across the leaf, the circuit solved in its states.

Rules of openings ask it of a circuit of one, the wiring of circuits that are laid: one engine for both. Judgements
stand in the rules.
"""
