"""The hash of one file: of Python what the compiler sees, of anything else its lines.

The syntax tree is hashed and not the compiled code: the code of one source differs between versions of Python, and two
machines of an office must not take each other's results for those of another program.
"""

import ast
import hashlib
from collections.abc import Iterator

_UNSEEN = frozenset({"ctx", "kind", "type_comment", "type_ignores"})
"""Fields of the tree that say nothing which the rest does not."""


def digest(text: bytes, name: str) -> tuple[str, tuple[str, ...]]:
    """Return the hash of a file and the names of what it imports.

    Parameters
    ----------
    text : bytes
        As it lies on the disk.
    name : str
        Of the file; one that ends in .py is read as Python.

    Returns
    -------
    hash : str
        64 hexadecimal digits; the same for every version of Python.
    imported : tuple of str
        Dotted names: modules, and what is taken from them, which may be modules too. Names that are relative keep their
        dots.
    """
    if name.endswith(".py"):
        try:
            tree = ast.parse(text)
        except (SyntaxError, ValueError):
            pass
        else:
            said: list[str] = []
            _say(tree, said)
            return hashlib.sha256("\x1f".join(said).encode("utf-8", "surrogatepass")).hexdigest(), _imported(tree)
    # Lines, since a checkout may end them in another way.
    return hashlib.sha256(b"\n".join(text.splitlines())).hexdigest(), ()


def _say(node: object, said: list[str]) -> None:
    if isinstance(node, ast.AST):
        said.append(type(node).__name__)
        for name in node._fields:
            value = getattr(node, name, None)
            if name in _UNSEEN or value is None:
                continue
            if isinstance(value, list):
                value = [each for each in value if not _means_nothing(each)]
                if not value:
                    continue
            said.append(name)
            _say(value, said)
        said.append(")")
    elif isinstance(node, list):
        said.append("[")
        for each in node:
            _say(each, said)
        said.append("]")
    else:
        said.append(repr(node))


def _means_nothing(node: object) -> bool:
    """Tell whether a statement leaves nothing in the compiled code, or only the version of the program."""
    if isinstance(node, ast.Expr):
        return isinstance(node.value, ast.Constant)
    if isinstance(node, ast.Assign):
        # A release that changes nothing else works out what the last one did.
        return any(isinstance(target, ast.Name) and target.id == "__version__" for target in node.targets)
    return isinstance(node, ast.Pass)


def _imported(tree: ast.AST) -> tuple[str, ...]:
    return tuple(dict.fromkeys(_names(tree)))


def _names(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            module = "." * node.level + (node.module or "")
            joint = "" if module.endswith(".") else "."
            yield module
            yield from (f"{module}{joint}{alias.name}" for alias in node.names)
