"""A catalogue as open tools write it is spoken from; what it lacks, or has wrongly, is English."""

import struct
import threading

import pytest

from hwsched import language
from hwsched.language import (
    ENGLISH,
    STRETCHED,
    VARIABLE,
    in_language,
    languages,
    phrase,
    phrase_of_count,
    speak,
    to_phrase,
)

GERMAN = {
    "": "Content-Type: text/plain; charset=UTF-8\nPlural-Forms: nplurals=2; plural=(n != 1);\n",
    "Openings": "Öffnungen",
    "{count} openings left out": "{count} Öffnungen ausgelassen",
    "{count} opening\0{count} openings": "{count} Öffnung\0{count} Öffnungen",
    "{name} is gone": "{nome} ist fort",
}


def written(texts):
    """Return a catalogue in the binary form that gettext reads (GNU gettext manual, "The Format of GNU MO Files")."""
    pairs = [(key.encode(), value.encode()) for key, value in sorted(texts.items())]
    heads, tails, at = [], [], 28 + 16 * len(pairs)
    for column, table in ((0, heads), (1, tails)):
        for pair in pairs:
            table.append(struct.pack("<II", len(pair[column]), at))
            at += len(pair[column]) + 1
    head = struct.pack("<7I", 0x950412DE, 0, len(pairs), 28, 28 + 8 * len(pairs), 0, 0)
    blob = b"".join(each + b"\0" for column in (0, 1) for each in (pair[column] for pair in pairs))
    return head + b"".join(heads) + b"".join(tails) + blob


@pytest.fixture
def german(tmp_path, monkeypatch):
    folder = tmp_path / "de" / "LC_MESSAGES"
    folder.mkdir(parents=True)
    (folder / "hwsched.mo").write_bytes(written(GERMAN))
    monkeypatch.setattr(language, "FOLDER", tmp_path)
    monkeypatch.delenv(VARIABLE, raising=False)
    language._catalogue.cache_clear()
    yield
    monkeypatch.delenv(VARIABLE, raising=False)
    speak()
    language._catalogue.cache_clear()


def test_english_is_the_code_s_own():
    assert phrase("{count:,} openings, {share:.1%}", count=1200, share=0.5) == "1,200 openings, 50.0%"
    assert phrase("as it is {in braces}") == "as it is {in braces}"
    assert phrase_of_count("{count} opening", "{count} openings", 0) == "0 openings"
    assert to_phrase("Openings") == "Openings"


def test_a_catalogue_is_spoken_from(german):
    assert languages() == ("en", "de")
    assert speak("de") == "de"
    assert phrase("Openings") == "Öffnungen"
    assert phrase("{count} openings left out", count=3) == "3 Öffnungen ausgelassen"
    assert phrase_of_count("{count} opening", "{count} openings", 1) == "1 Öffnung"
    assert phrase_of_count("{count} opening", "{count} openings", 7) == "7 Öffnungen"


def test_what_it_lacks_or_has_wrongly_is_english(german):
    speak("de")
    assert phrase("Findings") == "Findings"
    assert phrase("{name} is gone", name="M016") == "M016 is gone"
    assert phrase("") == ""
    assert speak("xx") == ENGLISH
    assert phrase("Openings") == "Openings"


def test_the_environment_chooses_before_all(german, monkeypatch):
    monkeypatch.setenv(VARIABLE, STRETCHED)
    assert speak("de") == STRETCHED
    assert phrase("Openings").startswith("[")


def test_a_language_for_a_while_is_this_thread_s_alone(german):
    heard = []
    with in_language("de"):
        other = threading.Thread(target=lambda: heard.append(phrase("Openings")))
        other.start()
        other.join()
        assert phrase("Openings") == "Öffnungen"
        with in_language(ENGLISH):
            assert phrase("Openings") == "Openings"
        with in_language(""):
            assert phrase("Openings") == "Openings"
    assert heard == [phrase("Openings")] == ["Openings"]


@pytest.mark.parametrize("text", ["Fit", "&Take in the survey of {count:,} openings", "{a}", "A line\nand another one"])
def test_the_stretched_is_two_fifths_longer_and_keeps_names(text):
    said = language.stretched(text)
    letters = sum(each.isalpha() for each in text)
    assert said[0] + said[-1] == "[]"
    assert len(said) - 2 >= len(text) + letters * 0.4 - 1
    assert [part for part in ("{count:,}", "{a}", "&T", "\n") if part in text] == [
        part for part in ("{count:,}", "{a}", "&T", "\n") if part in said
    ]
