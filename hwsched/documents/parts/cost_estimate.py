"""The cost estimate: parts, labour and what is unknown, by building, hardware set and opening."""

from collections.abc import Mapping
from decimal import Decimal

from hwsched.calc.parts.cost import Cost, by_key, combined
from hwsched.documents import words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.fitting.costing import price_openings, terms_of
from hwsched.quantities.money import rounded
from hwsched.render.blocks import Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, Table
from hwsched.wiring.costing import WITH_BUILDING, price_bill

NO_SET = "no hardware set"


def totals(project: ProjectView, by: str) -> Mapping[str, Cost]:
    """Add up costs by building, set or opening; supplies and all wire, in whole reels, stand under their building.

    Parameters
    ----------
    project : ProjectView
        With its terms.
    by : {"building", "set", "opening"}
        What is added up.
    """
    pairs_of = ((at.given, at.fit) for view in project.openings for at in view.points)
    found = price_openings(pairs_of, project.catalogue, project.terms, WITH_BUILDING)
    pairs: list[tuple[str, Cost]] = []
    for view in project.openings:
        opening = view.given.opening
        if opening.id in found:
            key = {"building": opening.building or "no building", "set": view.set_name or NO_SET}.get(by, view.mark)
            pairs.append((key, found[opening.id]))
    laid = price_bill(project.bill, project.power.supplies, project.catalogue, project.terms)
    for building, cost in laid.items():
        place = building or "no building"
        pairs.append((place if by == "building" else f"supplies and wire of {place}", cost))
    return by_key(pairs)


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the cost estimate of a project."""
    currency = terms_of(project.terms, project.catalogue).currency
    by_building = totals(project, "building")
    whole = combined(by_building.values())
    # Told beside the total, which would else be taken for that of all openings.
    left = [view.mark for view in project.openings if view.fit is None or view.fit.status != "fits"]
    labour = project.terms.labour_per_hour
    blocks: list[Block] = [
        Heading("Summary"),
        Facts(
            (
                ("Currency", currency or words.UNKNOWN),
                ("Parts", _money(whole.parts)),
                (
                    "Labour",
                    f"{words.UNKNOWN if labour is None else _money(whole.labour)} for {rounded(whole.hours, 1)} h",
                ),
                ("Total of what is known", _money(whole.total)),
                ("Labour an hour", labour or words.UNKNOWN),
                ("Learning rate", project.terms.learning_rate),
            )
        ),
    ]
    if whole.unknown:
        rows = tuple((u.about, words.quantity(float(u.quantity)), "; ".join(u.needs)) for u in whole.unknown)
        columns = (Column("What", 1.5), Column("Qty", 0.7, "right"), Column("Needs", 4.0))
        blocks += [
            Paragraph("Not counted, since something is unknown:", "caution"),
            Table(columns, rows, title="Unknown"),
        ]
    if whole.at_list:
        blocks.append(
            Paragraph(f"{len(whole.at_list)} parts stand at list price: no discount of their supplier is set.")
        )
    if left:
        blocks.append(Paragraph(f"Without a fit, so not counted: {len(left)} openings."))
    blocks.append(
        Paragraph(
            "An estimate: list prices of the catalogue less discounts, and hours of the labour table, which come from "
            "memory until a project puts its own in their place. Taxes, freight, permits and mains work are not in it. "
            "Amounts are rounded for print only.",
            "small",
        )
    )
    sections = [Section((*blocks, Heading("By building", 2), _table(by_building, "By building", "Building", labour)))]
    for key, title, label in (("set", "By hardware set", "Hardware set"), ("opening", "By opening", "Opening")):
        sections.append(Section((Heading(title), _table(totals(project, key), title, label, labour))))
    return Document(
        "Cost estimate", project.title, project.revision, project.date, tuple(sections), subtitle=currency or ""
    )


def _table(found: Mapping[str, Cost], title: str, label: str, labour: str | None) -> Table:
    def work(cost: Cost) -> Cell:
        return words.UNKNOWN if labour is None else float(rounded(cost.labour))

    rows: list[tuple[Cell, ...]] = [
        (
            key, float(rounded(cost.hours, 2)), float(rounded(cost.parts)), work(cost),
            float(rounded(cost.total)), "" if cost.complete else f"{len(cost.unknown)} unknown",
        )
        for key, cost in found.items()
    ]  # fmt: skip
    # From the exact costs, and not from the rounded cells above: those would be cents off in a long table.
    whole = combined(found.values())
    rows.append(
        (
            "Total", float(rounded(whole.hours, 2)), float(rounded(whole.parts)), work(whole),
            float(rounded(whole.total)), "",
        )
    )  # fmt: skip
    columns = (
        Column(label, 2.0), Column("Hours", 0.8, "right", 2), Column("Parts", 1.0, "right", 2),
        Column("Labour", 1.0, "right", 2),
        Column("Total", 1.0, "right", 2), Column("", 1.0),
    )  # fmt: skip
    return Table(columns, tuple(rows), title=title, strong_rows=frozenset({len(rows) - 1}))


def _money(amount: Decimal) -> str:
    return f"{rounded(amount):,}"


COST_ESTIMATE = DocumentKind("cost-estimate", "Cost estimate", ("pdf", "xlsx"), False, build)
