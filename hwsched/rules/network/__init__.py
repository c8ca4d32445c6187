"""The wires and circuits of an opening and of a supply, as rules and fitting reckon them. No rule stands here."""
