"""What a surveyed thing is: a name, a table and its declared facts."""

from dataclasses import dataclass

from hwsched.attributes import Attribute


@dataclass(frozen=True, slots=True)
class Entity:
    """One kind of surveyed thing."""

    name: str
    """Table name: opening, leaf, existing_item."""
    label: str
    attributes: tuple[Attribute, ...]

    def attribute(self, name: str) -> Attribute:
        """Return the attribute of that name; raises KeyError."""
        for attribute in self.attributes:
            if attribute.name == name:
                return attribute
        raise KeyError(name)
