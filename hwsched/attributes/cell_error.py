"""The refusal of one cell. Where the cell stands is not known here."""


class CellError(ValueError):
    """A cell that does not say what its attribute can hold.

    Parameters
    ----------
    read : str
        What the cell holds, as text.
    message : str
        Why it is refused.
    accepted : str
        What can stand there instead; may be empty.
    """

    def __init__(self, read: str, message: str, accepted: str = "") -> None:
        self.read = read
        self.message = message
        self.accepted = accepted
        super().__init__(f"read {read!r}: {message}" + (f"; accepted: {accepted}" if accepted else ""))
