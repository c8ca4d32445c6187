"""What another program changed in the project past its journal; on wish it is taken as it is, in one step."""

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.widgets.empty import EmptyText
from hwsched.language import phrase
from hwsched.operations.project.verifying import accept, verify


class JournalWindow(ToolWindow):
    """Sentences of what differs, and what can be done."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Changed past the journal"), parent)
        self.resize(760, 360)
        self.found: list[str] | None = None
        self.text = EmptyText("")
        self.text.setAccessibleName(phrase("What was changed past the journal"))
        self.again = self.button(phrase("Compare"), self.compare, phrase("Compare all of the project with its journal"))
        self.take = self.button(phrase("Take it as it is"), self.take_it, phrase("One step, which an undo takes back"))
        self.body.addWidget(self.text)
        self.foot.addWidget(self.again)
        self.foot.addWidget(self.take)
        self.enable()
        self.compare()

    def compare(self) -> None:
        """Compare tables, journal and contents, beside the window."""
        project = self.desk.workspace.project
        self.run(phrase("Comparing"), lambda _progress, _cancelled: verify(project).sentences(), self._show)

    def enable(self) -> None:
        """Only what was found can be taken."""
        self.again.setEnabled(self.idle)
        self.take.setEnabled(bool(self.found) and self.idle)

    def take_it(self) -> None:
        """Take what was found as it is."""
        workspace = self.desk.workspace
        self.edit(lambda: accept(workspace.project, who=workspace.who)[1], lambda _changes: self.compare())

    def _show(self, sentences: list[str]) -> None:
        self.found = sentences
        self.text.say(phrase("Nothing was changed past the journal. All of the project is as its steps left it."))
        self.text.setPlainText("\n".join(sentences))
        self.enable()
