"""Openings that are shared out to other processes have the fits that they have here, whatever happens to the others."""

import io
import logging
import pickle
import sys
from dataclasses import replace
from time import monotonic, sleep

import pytest

from hwsched.fingerprint import engine
from hwsched.model.project import open_project
from hwsched.model.queries import by_opening, read_inputs
from hwsched.operations.beside import Receiver, Sender
from hwsched.operations.opening import several_cores
from hwsched.operations.opening.fits_within import FitMemory, UnknownFitError
from hwsched.operations.opening.lock_points import afresh
from hwsched.operations.opening.several_cores import SeveralCores
from hwsched.values.input_key import input_key


@pytest.fixture(scope="module")
def openings(corner_folder):
    """Openings of the corner, each several times with another duty."""
    with open_project(corner_folder / "corner.hwsched") as project, project.reading() as connection:
        held = list(by_opening(read_inputs(connection, None, project.catalogue.read(connection))))
    return [
        tuple(replace(each, opening=replace(each.opening, operations_per_day=10.0 + 3 * n)) for each in inputs)
        for n in range(12)
        for inputs in held
    ]


def fits_by(openings, memory, **given):
    with SeveralCores(openings, memory, **given) as turns:
        return [[each.fit for each in afresh(inputs, memory.of)] for inputs in turns]


@pytest.fixture(scope="module")
def alone(openings):
    memory = FitMemory()
    return [[each.fit for each in afresh(inputs, memory.of)] for inputs in openings], memory.count


def test_another_process_does_its_share_and_finds_the_same(openings, alone, caplog):
    memory, last = FitMemory(), openings[-1][0]
    with SeveralCores(openings, memory, workers=1) as turns:
        # The other begins at the back; this one waits until the last opening has come from there.
        until = monotonic() + 60
        while not known(memory, last) and monotonic() < until:
            sleep(0.01)
        found = [[each.fit for each in afresh(inputs, memory.of)] for inputs in turns]
    assert found == alone[0]
    assert not caplog.records
    assert memory.count < alone[1]


def known(memory, given):
    try:
        return memory.known(given, input_key(given)) is not None
    except UnknownFitError:
        return False


def test_a_process_that_dies_leaves_its_share_to_this_one(openings, alone, monkeypatch, caplog):
    said = pickle.dumps(engine().key)
    code = f"import sys; m={said!r}; sys.stdout.buffer.write(len(m).to_bytes(8, 'big') + m)"
    monkeypatch.setattr(several_cores, "COMMAND", [sys.executable, "-c", code])
    with caplog.at_level(logging.WARNING):
        assert fits_by(openings, FitMemory(), workers=1) == alone[0]
    assert "beside this one failed" in caplog.text


def test_another_version_of_the_program_is_not_asked(openings, alone, monkeypatch, caplog):
    said = pickle.dumps("another engine")
    code = f"import sys; m={said!r}; sys.stdout.buffer.write(len(m).to_bytes(8, 'big') + m)"
    monkeypatch.setattr(several_cores, "COMMAND", [sys.executable, "-c", code])
    assert fits_by(openings, FitMemory(), workers=1) == alone[0]
    assert "another version" in caplog.text


def test_who_stops_half_way_leaves_no_process(openings):
    turns = SeveralCores(openings, FitMemory(), workers=1)
    with turns:
        next(iter(turns))
    assert all(each.poll() is not None for each in turns.processes)


def test_few_openings_start_nothing(openings, monkeypatch):
    monkeypatch.setattr(several_cores, "COMMAND", ["/nowhere/at/all"])
    memory = FitMemory()
    with several_cores.in_turn(openings, memory) as turns:
        assert [afresh(inputs, memory.of) for inputs in turns]
    assert turns.processes == []


def test_what_was_sent_before_is_named_only():
    stream = io.BytesIO()
    sender, thing = Sender(stream), tuple(f"word {number}" for number in range(1000))
    lengths = []
    for message in (thing, [thing, "more"], [thing]):
        before = stream.tell()
        sender.send(message)
        lengths.append(stream.tell() - before)
    assert lengths[0] > 10_000
    assert max(lengths[1:]) < 100
    stream.seek(0)
    receiver = Receiver(stream)
    first, second, third = (receiver.receive() for _ in range(3))
    assert (first, second, third) == (thing, [thing, "more"], [thing])
    assert first is second[0] is third[0]
    with pytest.raises(EOFError):
        receiver.receive()


def test_no_process_is_started_for_kinds_that_come_again(monkeypatch):
    """They are told from openings that all differ once some hundred have gone by."""
    started = []
    monkeypatch.setattr(SeveralCores, "_start", lambda _, count: started.append(count))
    monkeypatch.setattr(several_cores, "cores", lambda: 4)

    def go_through(kinds, many):
        memory, met = FitMemory(), set()
        for (place,) in SeveralCores([(number,) for number in range(many)], memory):
            if place % kinds not in met:
                met.add(place % kinds)
                memory.count += 1

    go_through(400, 10_000)
    assert not started
    go_through(10_000, several_cores._FIRST + several_cores._LEFT - 64)
    assert not started
    go_through(10_000, 10_000)
    assert started == [3]
