"""What a part kind is. Kinds themselves stand one a file."""

from dataclasses import dataclass

from hwsched.attributes import Attribute


@dataclass(frozen=True, slots=True)
class PartKind:
    """A kind of catalogue entry; it decides which attributes its parts have."""

    name: str
    """Kebab-case; held with each part."""
    label: str
    """Sheet name in the catalogue workbook, at most 31 characters."""
    attributes: tuple[Attribute, ...]
    note: str = ""

    def attribute(self, name: str) -> Attribute:
        """Return the attribute of that name; raises KeyError."""
        for attribute in self.attributes:
            if attribute.name == name:
                return attribute
        raise KeyError(name)
