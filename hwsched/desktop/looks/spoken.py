"""The language of the screen: the one that the person chose, for our words and for Qt's own alike."""

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QObject, QTranslator

from hwsched.desktop.project.preferences import Preferences
from hwsched.language import ENGLISH, languages, phrase, speak


class Spoken(QTranslator):
    """Says what Qt has to say from our catalogue; what is not in it, another translator says, or Qt in English."""

    def isEmpty(self) -> bool:  # noqa: N802
        """Tell that there is something in it."""
        return False

    def translate(
        self, _context: str, source_text: str, _disambiguation: str | None = None, _n: int = -1
    ) -> str | None:
        """Return a text of Qt's as the catalogue has it; None, the null string, has Qt ask the next one."""
        said = phrase(source_text)
        return said if said != source_text else None


def speak_chosen(application: QCoreApplication, preferences: Preferences) -> str:
    """Speak the chosen language from here on; what was made before keeps its words.

    Returns
    -------
    str
        The language in force.
    """
    language = speak(preferences.language or _of_the_system())
    if language != ENGLISH:
        translate_qt(application, language)
    return language


def translate_qt(application: QCoreApplication, language: str) -> QObject:
    """Let Qt say its own words in a language: from its own catalogues, and from ours before them."""
    holder = QObject(application)
    own = QTranslator(holder)
    if own.load(f"qtbase_{language}", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
        application.installTranslator(own)
    application.installTranslator(Spoken(holder))
    return holder


def own_name(language: str) -> str:
    """Return how those who speak a language call it.

    Examples
    --------
    >>> own_name("en")
    'English'
    """
    if language == ENGLISH:
        return "English"
    return QLocale(language).nativeLanguageName() or language


def _of_the_system() -> str:
    """Return the first of the system's languages that there is."""
    wanted = [each.replace("-", "_") for each in QLocale.system().uiLanguages()]
    known = languages()
    found = (each for name in wanted for each in known if each == name or each == name.partition("_")[0])
    return next(found, ENGLISH)
