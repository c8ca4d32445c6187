"""What is on a page: one file a document; the lines below are their table of contents. No paper, no file, no query.

A table of names, since the help of a verb shows it and must not wait for all pages; `documents` has them loaded.
"""

from hwsched.family import Line

# Their order is the order in which people see them.
LINES = (
    Line("schedule", "release.schedule:SCHEDULE"),
    Line("schedule-across", "release.schedule_across:SCHEDULE_ACROSS"),
    Line("pick-list", "stock.pick_list:PICK_LIST"),
    Line("packets", "release.packet:PACKET"),
    Line("type-sheets", "release.type_sheets:TYPE_SHEETS"),
    Line("fault-sheets", "release.fault_sheet:FAULT_SHEET"),
    Line("box-sheets", "release.box_sheet:BOX_SHEETS"),
    Line("power-schedule", "power.power_schedule:POWER_SCHEDULE"),
    Line("wire-list", "power.wire_list:WIRE_LIST"),
    Line("battery-calendar", "power.battery_calendar:BATTERY_CALENDAR"),
    Line("transmittals", "release.transmittals:TRANSMITTALS"),
    Line("survey-sheets", "survey.survey_sheets:SURVEY_SHEETS"),
    Line("return-visit", "survey.return_visit:RETURN_VISIT"),
    Line("cost-estimate", "parts.cost_estimate:COST_ESTIMATE"),
)
