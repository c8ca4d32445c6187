"""What every catalogue entry has, whatever its kind: the fields of `hwsched.values.Part` as columns of a sheet."""

from typing import Final

from hwsched.attributes import Attribute

NUMBER: Final = Attribute(
    "number",
    "Part number",
    synonyms=("catalogue number", "catalog number", "cat no", "part no", "item number", "number", "sku"),
    required=True,
    note="Text, as it is ordered by: 0012 and 9E4 stay as typed. Each number stands once in the whole book.",
)
DESCRIPTION: Final = Attribute(
    "description",
    "Description",
    synonyms=("desc", "item description", "name"),
    required=True,
    note="As it shall stand in the schedule and on the pick list.",
)
SUPPLIER: Final = Attribute("supplier", "Supplier", synonyms=("vendor", "ordered from"))
FINISH: Final = Attribute(
    "finish", "Finish", synonyms=("fin", "finish code"), note="As it shall stand in the schedule."
)
UNIT: Final = Attribute(
    "unit",
    "Order unit",
    synonyms=("unit", "uom", "unit of measure"),
    note="What one is when ordered: EA, PAIR, BOX, M. Empty means EA.",
)
LIST_PRICE: Final = Attribute(
    "list_price", "List price", "money", synonyms=("price", "unit price", "cost"), low=0, note="For one order unit."
)
CURRENCY: Final = Attribute("currency", "Currency", synonyms=("cur",), note="Three letters, such as USD (ISO 4217).")
SUPERSEDED_BY: Final = Attribute(
    "superseded_by",
    "Superseded by",
    synonyms=("replaced by", "successor"),
    note="Number of the part that follows this one; it must be in the catalogue.",
)
STOCK: Final = Attribute(
    "stock", "In stock", "number", synonyms=("on hand", "stock"), low=0, note="Order units on hand when it was counted."
)
PREFERRED: Final = Attribute(
    "preferred",
    "Preferred",
    "integer",
    synonyms=("preference", "preferred rank"),
    low=1,
    high=99,
    note="Rank among parts that serve alike, 1 first; empty: no preference.",
)

ENTRY: Final[tuple[Attribute, ...]] = (
    NUMBER,
    DESCRIPTION,
    SUPPLIER,
    FINISH,
    UNIT,
    LIST_PRICE,
    CURRENCY,
    SUPERSEDED_BY,
)
"""In the order of the columns."""

ON_HAND: Final[tuple[Attribute, ...]] = (STOCK, PREFERRED)
"""What ranks parts that fit; these columns stand after those of the kind."""
