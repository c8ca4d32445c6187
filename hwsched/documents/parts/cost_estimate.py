"""The cost estimate: parts, labour and what is unknown, by building, hardware set and opening."""

from collections.abc import Mapping
from decimal import Decimal

from hwsched.calc.parts.cost import Cost, by_key, combined
from hwsched.documents import words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.fitting.costing import price_openings, terms_of
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities.money import rounded
from hwsched.render.blocks import Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, Table
from hwsched.values.amounts import plain_amount
from hwsched.wiring.costing import WITH_BUILDING, price_bill

NO_SET = to_phrase("no hardware set")


def without_fit(project: ProjectView) -> list[str]:
    """Return the marks of the openings that have no fit, and so no cost."""
    return [view.mark for view in project.openings if view.fit is None or view.fit.status != "fits"]


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
            key = {"building": opening.building or phrase("no building"), "set": view.set_name or phrase(NO_SET)}.get(
                by, view.mark
            )
            pairs.append((key, found[opening.id]))
    laid = price_bill(project.bill, project.power.supplies, project.catalogue, project.terms)
    for building, cost in laid.items():
        place = building or phrase("no building")
        pairs.append((place if by == "building" else phrase("supplies and wire of {place}", place=place), cost))
    return by_key(pairs)


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the cost estimate of a project."""
    currency = terms_of(project.terms, project.catalogue).currency
    by_building = totals(project, "building")
    whole = combined(by_building.values())
    # Told beside the total, which would else be taken for that of all openings.
    left = without_fit(project)
    labour = project.terms.labour_per_hour
    blocks: list[Block] = [
        Heading(phrase("Summary")),
        Facts(
            (
                (phrase("Currency"), currency or phrase(words.UNKNOWN)),
                (phrase("Parts"), _money(whole.parts)),
                (
                    phrase("Labour"),
                    phrase(
                        "{unknown} for {rounded} h",
                        unknown=phrase(words.UNKNOWN) if labour is None else _money(whole.labour),
                        rounded=rounded(whole.hours, 1),
                    ),
                ),
                (phrase("Total of what is known"), _money(whole.total)),
                (phrase("Labour an hour"), labour or phrase(words.UNKNOWN)),
                (phrase("Learning rate"), project.terms.learning_rate),
            )
        ),
    ]
    if whole.unknown:
        rows = tuple((u.about, plain_amount(float(u.quantity)), words.needed(u.needs)) for u in whole.unknown)
        columns = (Column(phrase("What"), 1.5), Column(phrase("Qty"), 0.7, "right"), Column(phrase("Needs"), 4.0))
        blocks += [
            Paragraph(phrase("Not counted, since something is unknown:"), "caution"),
            Table(columns, rows, title=phrase("Unknown")),
        ]
    if whole.at_list:
        blocks.append(
            Paragraph(
                phrase_of_count(
                    "{count} part stands at list price: no discount of their supplier is set.",
                    "{count} parts stand at list price: no discount of their supplier is set.",
                    len(whole.at_list),
                )
            )
        )
    if left:
        blocks.append(
            Paragraph(
                phrase_of_count(
                    "Without a fit, so not counted: {count} opening.",
                    "Without a fit, so not counted: {count} openings.",
                    len(left),
                )
            )
        )
    blocks.append(
        Paragraph(
            phrase(
                "An estimate: list prices of the catalogue less discounts, and hours of the labour table, "
                "which come from memory until a project puts its own in their place. Taxes, freight, permits "
                "and mains work are not in it. Amounts are rounded for print only."
            ),
            "small",
        )
    )
    sections = [
        Section(
            (
                *blocks,
                Heading(phrase("By building"), 2),
                _table(by_building, phrase("By building"), phrase("Building"), labour),
            )
        )
    ]
    for key, title, label in (
        ("set", phrase("By hardware set"), phrase("Hardware set")),
        ("opening", phrase("By opening"), phrase("Opening")),
    ):
        sections.append(Section((Heading(title), _table(totals(project, key), title, label, labour))))
    return Document(
        phrase("Cost estimate"), project.title, project.revision, project.date, tuple(sections), subtitle=currency or ""
    )


def _table(found: Mapping[str, Cost], title: str, label: str, labour: str | None) -> Table:
    def work(cost: Cost) -> Cell:
        return phrase(words.UNKNOWN) if labour is None else float(rounded(cost.labour))

    rows: list[tuple[Cell, ...]] = [
        (
            key,
            float(rounded(cost.hours, 2)),
            float(rounded(cost.parts)),
            work(cost),
            float(rounded(cost.total)),
            "" if cost.complete else phrase("{count} unknown", count=len(cost.unknown)),
        )
        for key, cost in found.items()
    ]
    # From the exact costs, and not from the rounded cells above: those would be cents off in a long table.
    whole = combined(found.values())
    rows.append(
        (
            phrase("Total"),
            float(rounded(whole.hours, 2)),
            float(rounded(whole.parts)),
            work(whole),
            float(rounded(whole.total)),
            "",
        )
    )
    columns = (
        Column(label, 2.0),
        Column(phrase("Hours"), 0.8, "right", 2),
        Column(phrase("Parts"), 1.0, "right", 2),
        Column(phrase("Labour"), 1.0, "right", 2),
        Column(phrase("Total"), 1.0, "right", 2),
        Column("", 1.0),
    )
    return Table(columns, tuple(rows), title=title, strong_rows=frozenset({len(rows) - 1}))


def _money(amount: Decimal) -> str:
    return f"{rounded(amount):,}"


COST_ESTIMATE = DocumentKind("cost-estimate", to_phrase("Cost estimate"), ("pdf", "xlsx"), False, build)
