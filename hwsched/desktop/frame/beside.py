"""Pages that are made of the desk alone: their table of contents; tab, menu and command follow.

What a page says of itself stands here and not in its file, which is loaded when somebody first goes to it.
"""

from typing import Final

from hwsched.desktop.frame.later import later
from hwsched.desktop.frame.place import Place
from hwsched.desktop.frame.side_place import SidePlace
from hwsched.language import to_phrase

# Their order is that of the tabs and menus.
_SIDE: Final = (
    SidePlace(
        "deliveries",
        to_phrase("Deliveries"),
        to_phrase("Survey files taken in, what they left to decide, retired openings"),
        later("survey.deliveries_window:DeliveriesWindow"),
        within="survey",
    ),
    SidePlace(
        "missing",
        to_phrase("Missing facts"),
        to_phrase("Ranked by what they unblock; return visit"),
        later("survey.missing_window:MissingWindow"),
        within="survey",
    ),
    SidePlace(
        "what-if",
        to_phrase("What if?"),
        to_phrase("Compare before anything is changed"),
        later("opening.what_if_window:WhatIfWindow"),
        within="openings",
    ),
    SidePlace(
        "why",
        to_phrase("Why?"),
        to_phrase("The reasons behind a result"),
        later("findings.why_window:WhyWindow"),
        within="openings",
        told=later("findings.why_window:WhyWindow.tell"),
        listed=False,
    ),
    SidePlace(
        "findings",
        to_phrase("Findings"),
        to_phrase("All findings by rule, opening or cure; waived, or mended for all that share a cure"),
        later("findings.findings_window:FindingsWindow"),
        "openings",
        told=later("findings.findings_window:FindingsWindow.tell"),
        within="openings",
    ),
    SidePlace(
        "waivers",
        to_phrase("Waivers"),
        to_phrase("Who accepted which finding, and why"),
        later("findings.waivers_window:WaiversWindow"),
        within="openings",
    ),
    SidePlace(
        "upgrade",
        to_phrase("Since the upgrade"),
        to_phrase("What this version says otherwise than an earlier one"),
        later("opening.upgrade_window:UpgradeWindow"),
        within="openings",
        shown=later("opening.upgrade_window:UpgradeWindow.compare_first"),
    ),
    SidePlace(
        "catalogue",
        to_phrase("Catalogue"),
        to_phrase("All parts: forms, where used, files, what an edit changes"),
        later("parts.parts_window:PartsWindow"),
        within="parts",
        told=later("parts.part_named:show_named"),
    ),
    SidePlace(
        "sets",
        to_phrase("Hardware sets"),
        to_phrase("Make, propose, change and give hardware sets"),
        later("parts.sets_window:SetsWindow"),
        within="parts",
    ),
    SidePlace(
        "fewest",
        to_phrase("Fewest different parts"),
        to_phrase("Few different parts, against cost"),
        later("parts.fewest_window:FewestWindow"),
        within="parts",
    ),
    SidePlace(
        "cost",
        to_phrase("Cost"),
        to_phrase("Totals, and the terms that the project pays"),
        later("parts.cost_window:CostWindow"),
        within="parts",
        shown=later("parts.cost_window:CostWindow.show_kept"),
    ),
    SidePlace(
        "revisions",
        to_phrase("Revisions"),
        to_phrase("States of the project under a letter: freeze one, compare"),
        later("release.revisions_window:RevisionsWindow"),
        within="release",
    ),
    SidePlace(
        "documents",
        to_phrase("Documents"),
        to_phrase("See documents page by page before they are printed"),
        later("release.documents_window:DocumentsWindow"),
        within="release",
    ),
    SidePlace(
        "gate",
        to_phrase("Release gate"),
        to_phrase("Which openings may be picked for and installed, and what is missing at the others"),
        later("release.gate_window:GateWindow"),
        within="release",
        shown=later("release.gate_window:GateWindow.ask"),
    ),
    SidePlace(
        "transmittals",
        to_phrase("Transmittals"),
        to_phrase("What went to whom, and the files as they went out"),
        later("release.transmittals_window:TransmittalsWindow"),
        within="release",
    ),
    SidePlace(
        "office",
        to_phrase("Letterhead and paper"),
        to_phrase("How the office's documents look: letterhead, paper, words, notes, pages of its own, names of files"),
        later("release.office_window:OfficeWindow"),
        within="release",
    ),
    SidePlace(
        "rulebook",
        to_phrase("Rulebook"),
        to_phrase("Every rule, its limits in force, off or on"),
        later("findings.rulebook_window:RulebookWindow"),
        told=later("findings.rulebook_window:RulebookWindow.choose"),
    ),
    SidePlace(
        "history",
        to_phrase("History"),
        to_phrase("Who changed what, and when"),
        later("project.history_window:HistoryWindow"),
        listed=False,
    ),
    SidePlace(
        "copies",
        to_phrase("Copies"),
        to_phrase("Daily copies of this project, and putting one back"),
        later("project.copies_window:CopiesWindow"),
    ),
    SidePlace(
        "journal",
        to_phrase("Changed past the journal"),
        to_phrase("What another program changed in this project"),
        later("project.journal_window:JournalWindow"),
    ),
)

PAGES: Final[tuple[Place, ...]] = tuple(each.place() for each in _SIDE)
