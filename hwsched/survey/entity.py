"""What a surveyed thing is: a name, a table and its declared facts."""

from dataclasses import dataclass

from hwsched.attributes import Attribute
from hwsched.telling.nearest import nearest


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

    def nearest(self, word: str) -> str:
        """Return what follows the refusal of a name: the fact that is nearly meant, by name, label or heading.

        Examples
        --------
        >>> from hwsched.survey import LEAF
        >>> LEAF.nearest("thickness"), LEAF.nearest("thicknes_mm"), LEAF.nearest("qqq")
        ('; nearest: thickness_mm', '; nearest: thickness_mm', '')
        """
        known = {
            said.casefold(): each.name for each in self.attributes for said in (*each.synonyms, each.label, each.name)
        }
        near = nearest(word, known, 1)
        return f"; nearest: {known[near[0]]}" if near else ""
