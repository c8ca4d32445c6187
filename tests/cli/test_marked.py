"""`hwsched release print --since`: a revision is laid beside the project as it stands."""

from pypdf import PdfReader

from hwsched.cli.command import run


def test_what_is_otherwise_since_a_revision_bears_the_next_letter(tmp_path, capsys):
    path = str(tmp_path / "yard.hwsched")
    assert run(["project", "new", path]) == 0
    assert run(["survey", "add", path, "M1", "--who", "ann"]) == 0
    assert run(["release", "revision", path, "--freeze", "--who", "ann"]) == 0
    told = []
    for folder in ("same", "other"):
        to = tmp_path / folder
        assert run(["release", "print", path, "packets", "--since", "A", "--to", str(to)]) == 0, capsys.readouterr().err
        told.append(PdfReader(to / "packets" / "M1.pdf").pages[0].extract_text().split())
        assert run(["survey", "edit", path, "M1", "opening", "hand", "LH", "--who", "ann"]) == 0
    assert "B" not in told[0]
    assert "B" in told[1]
    assert run(["release", "print", path, "packets", "--since", "C", "--to", str(tmp_path)]) != 0
