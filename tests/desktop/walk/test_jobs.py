"""The jobs of a day at the desktop, and which walk does each by mouse and again by keys alone."""

import importlib
import inspect

import pytest

JOBS = {
    "edit one fact on thirty openings": "register.one_fact_of_thirty_openings_and_a_query_kept_as_a_view",
    "rated wood doors thicker than so much": "register.one_fact_of_thirty_openings_and_a_query_kept_as_a_view",
    "keep the view": "register.one_fact_of_thirty_openings_and_a_query_kept_as_a_view",
    "thickness and parts found by words": "register.thickness_and_parts_are_found_by_words",
    "choose and freeze columns": "register.columns_are_chosen_and_frozen_and_a_block_goes_out_and_comes_back",
    "a block out to a spreadsheet and back": (
        "register.columns_are_chosen_and_frozen_and_a_block_goes_out_and_comes_back"
    ),
    "why this part": "opening.why_another_part_and_a_place_by_hand",
    "another part": "opening.why_another_part_and_a_place_by_hand",
    "drag and nudge": "opening.why_another_part_and_a_place_by_hand",
    "pieces at the bench": "opening.what_was_done_at_the_bench_is_written_down_per_piece",
    "compare two": "opening.two_are_compared_and_an_old_step_is_taken_back_with_its_values_seen",
    "undo an old step with its values seen": (
        "opening.two_are_compared_and_an_old_step_is_taken_back_with_its_values_seen"
    ),
    "undo another's step with its values seen": (
        "others.a_step_of_another_is_seen_with_its_values_and_taken_back_by_its_name"
    ),
    "what another typed meanwhile": "daily.what_another_typed_meanwhile_is_a_question_with_both_values",
    "where used": "parts.where_a_part_is_used_an_edit_of_it_and_what_it_costs",
    "edit a part and see what it changes": "parts.where_a_part_is_used_an_edit_of_it_and_what_it_costs",
    "cost": "parts.where_a_part_is_used_an_edit_of_it_and_what_it_costs",
    "sets": "parts.a_set_is_made_of_openings_given_and_looked_at_before_it_is_changed",
    "waive": "findings.a_finding_is_waived_and_a_missing_fact_filled_in_for_all",
    "one cure for all": "findings.a_finding_is_waived_and_a_missing_fact_filled_in_for_all",
    "missing facts": "findings.a_finding_is_waived_and_a_missing_fact_filled_in_for_all",
    "what if": "findings.what_if_is_compared_before_it_is_accepted_and_a_calculator_goes_back_to_its_opening",
    "a calculator as an opening stands": (
        "findings.what_if_is_compared_before_it_is_accepted_and_a_calculator_goes_back_to_its_opening"
    ),
    "power by drag": "power.an_opening_goes_to_another_circuit_and_supplies_are_sited",
    "siting": "power.an_opening_goes_to_another_circuit_and_supplies_are_sited",
    "preview of a document, files of it": "power.a_document_is_seen_searched_and_written",
    "print to a printer": "printing.a_packet_is_looked_at_and_printed_at_its_true_size",
    "a survey in millimetres": "survey.a_list_in_millimetres_is_asked_for_its_unit_and_told_as_understood",
    "a metric project": "daily.a_metric_project_is_begun_and_its_units_are_changed_later",
    "a second project, and a recent one": (
        "projects.a_second_project_is_opened_and_the_first_one_again_from_the_recent_ones"
    ),
    "two processes on one project, kill and start again": (
        "projects.another_person_types_is_seen_and_killed_and_nothing_written_is_lost"
    ),
    "remove by name after order and search": (
        "daily.what_is_chosen_stays_so_through_order_and_search_and_removing_asks_by_name"
    ),
    "a refused value mended, a command while typing": ("daily.a_value_is_typed_refused_mended_and_outlives_a_command"),
    "a word of a choice": "daily.a_word_is_looked_at_by_an_arrow_key_and_taken_by_return",
    "stop a job, close while one runs": "daily.a_job_is_stopped_and_the_window_closes_while_one_runs",
}


@pytest.mark.parametrize("job", JOBS)
def test_each_job_is_walked_by_mouse_and_by_keys(job):
    room, _, name = JOBS[job].partition(".")
    walk = getattr(importlib.import_module(f"tests.desktop.walk.test_{room}"), f"test_{name}")
    assert "hands" in inspect.signature(walk).parameters, "by mouse alone, or by keys alone"
