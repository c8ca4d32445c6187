"""All documents, loaded."""

from typing import Final

from hwsched.documents import LINES
from hwsched.documents.view import DocumentKind
from hwsched.family import loaded

DOCUMENTS: Final = loaded("hwsched.documents", LINES, DocumentKind)
