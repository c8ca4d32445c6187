"""Which one-line changes a module offers, and a draw among them that stays as it is while other lines change.

Left out is what no reader would take for a fault of the program: type hints, decorators, docstrings and messages,
logging, `__all__`, worked examples of calculators, the `strict` of a zip, and assignments without which a name would be
missing altogether (any test at all sees that). Left out too is whether equality counts where a comparison is blurred
by a tolerance for rounding: nothing is ever exactly that far off.
"""

import ast
import csv
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from hashlib import sha256
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).parents[2]
EQUIVALENT = Path(__file__).with_name("equivalent.csv")

COMPARISONS = {
    ast.Lt: ("<", "<="),
    ast.LtE: ("<=", "<"),
    ast.Gt: (">", ">="),
    ast.GtE: (">=", ">"),
    ast.Eq: ("==", "!="),
    ast.NotEq: ("!=", "=="),
    ast.Is: ("is", "is not"),
    ast.IsNot: ("is not", "is"),
    ast.In: ("in", "not in"),
    ast.NotIn: ("not in", "in"),
}
ARITHMETIC = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
    ast.FloorDiv: ("//", "/"),
    ast.Mod: ("%", "//"),
    ast.Pow: ("**", "*"),
    ast.BitOr: ("|", "&"),
    ast.BitAnd: ("&", "|"),
}
OPPOSITE_CALLS = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}
TOLERANCES = ("TOUCH", "EQUAL", "TOLERANCE_V")
"""How names of tolerances for rounding begin."""
MOST_ROUNDED = 1e-6
"""Largest number that is written for a tolerance."""
LOGGERS = {"log", "logger", "logging", "warnings", "LOG", "_log"}


@dataclass(frozen=True, slots=True)
class Mutant:
    """One line changed."""

    file: str
    """Under the root, with forward slashes."""
    line: int
    kind: str
    before: str
    after: str
    """The whole line, without its end."""
    statement: range
    """Lines of the statement that it stands in; a test that runs one of them runs the change."""
    scope: range | None
    """Lines of the innermost function that it stands in, or whose default it changes; None at module or class level."""
    at_import: bool
    names: tuple[str, ...] = ()
    """At module or class level: names that the statement binds."""

    @property
    def diff(self) -> str:
        """The change as two lines."""
        return f"    - {self.before.strip()}\n    + {self.after.strip()}"


def mutants_of(path: Path) -> list[Mutant]:
    """Return the changes that a module offers; a draw looks whether each says something else."""
    source = path.read_text(encoding="utf-8")
    return list(_Sites(path.relative_to(ROOT).as_posix(), source.split("\n")).module(ast.parse(source)))


def says_something_else(mutant: Mutant) -> bool:
    """Whether the module with the changed line parses, and to another program."""
    source = (ROOT / mutant.file).read_text(encoding="utf-8")
    lines = source.split("\n")
    lines[mutant.line - 1] = mutant.after
    try:
        return ast.dump(ast.parse("\n".join(lines))) != ast.dump(ast.parse(source))
    except SyntaxError:
        return False


def draw(found: Iterable[Mutant], count: int, seed: str) -> list[Mutant]:
    """Draw mutants, one a line, those named as equivalent left out.

    The order hangs on the seed and on each changed line itself, so that a change elsewhere leaves the rest of a draw.
    """
    seen: Counter[tuple[str, str, str]] = Counter()
    ranked = []
    for each in found:
        key = (each.file, each.before.strip(), each.after.strip())
        ranked.append((sha256(repr((seed, *key, seen[key])).encode()).hexdigest(), each))
        seen[key] += 1
    equivalent = {(row.file, row.before, row.after) for row in read_equivalent()}
    drawn: dict[tuple[str, int], Mutant] = {}
    for _, each in sorted(ranked, key=lambda pair: pair[0]):
        if len(drawn) == count:
            break
        told = (each.file, each.before.strip(), each.after.strip())
        if (each.file, each.line) not in drawn and told not in equivalent and says_something_else(each):
            drawn[each.file, each.line] = each
    return list(drawn.values())


@dataclass(frozen=True, slots=True)
class Equivalent:
    """A change that changes nothing that anybody could see, and why."""

    file: str
    before: str
    after: str
    reason: str


def read_equivalent() -> list[Equivalent]:
    """Read the changes that were looked at and found to change nothing."""
    with EQUIVALENT.open(encoding="utf-8", newline="") as file:
        return [Equivalent(**row) for row in csv.DictReader(file)]


class _Sites:
    """Walks one module; holds where it stands."""

    def __init__(self, file: str, lines: list[str]) -> None:
        self.file = file
        self.lines = lines
        self.statement = range(0)
        self.scope: range | None = None
        self.at_import = True
        self.names: tuple[str, ...] = ()
        self.bound: Counter[str] = Counter()
        """How often each name is bound in the function that is walked."""

    def module(self, tree: ast.Module) -> Iterator[Mutant]:
        for statement in tree.body:
            yield from self.walk(statement)

    def walk(self, node: ast.AST) -> Iterator[Mutant]:
        if isinstance(node, ast.JoinedStr | ast.Import | ast.ImportFrom):
            return
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield from self.function(node)
        elif isinstance(node, ast.ClassDef):
            held = self.names
            for statement in node.body:
                self.names = (node.name,)
                yield from self.walk(statement)
            self.names = held
        elif isinstance(node, ast.stmt):
            yield from self.walk_statement(node)
        else:
            yield from self.of_expression(node)
            yield from self.children(node)

    def function(self, node: ast.FunctionDef | ast.AsyncFunctionDef) -> Iterator[Mutant]:
        held = self.statement, self.scope, self.at_import, self.bound
        first = node.body[0]
        body = range(first.lineno, (node.end_lineno or first.lineno) + 1)
        self.statement, self.scope = range(node.lineno, first.lineno), body
        for default in (*node.args.defaults, *node.args.kw_defaults):
            if default is not None:
                yield from self.walk(default)
        self.at_import = False
        self.bound = Counter(
            each.id for each in ast.walk(node) if isinstance(each, ast.Name) and isinstance(each.ctx, ast.Store)
        )
        self.bound.update(each.arg for each in ast.walk(node.args) if isinstance(each, ast.arg))
        for statement in node.body:
            yield from self.walk(statement)
        self.statement, self.scope, self.at_import, self.bound = held

    def walk_statement(self, node: ast.stmt) -> Iterator[Mutant]:
        held = self.statement, self.names
        body = getattr(node, "body", None)
        end = body[0].lineno if body else (node.end_lineno or node.lineno) + 1
        self.statement = range(node.lineno, max(end, node.lineno + 1))
        if self.scope is None and isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            self.names += tuple(
                each.id for target in targets for each in ast.walk(target) if isinstance(each, ast.Name)
            )
        if not self.left_out(node):
            yield from self.of_statement(node)
            if not isinstance(node, ast.Raise):  # what it says is a message
                yield from self.children(node)
        self.statement, self.names = held

    def left_out(self, node: ast.stmt) -> bool:
        match node:
            case ast.Expr(value=ast.Constant()) | ast.Assert():
                return True
            case ast.Expr(value=ast.Call(func=ast.Attribute(value=ast.Name(id=name)))) if name in LOGGERS:
                return True
            case ast.Assign(targets=[ast.Name(id="__all__")]):
                return True
            case ast.Assign(value=ast.BinOp(op=ast.BitOr())) if self.scope is None:
                return True  # a type by another name
            case ast.If(test=ast.Name(id="TYPE_CHECKING")):
                return True
        return False

    def children(self, node: ast.AST) -> Iterator[Mutant]:
        for name, value in ast.iter_fields(node):
            if name in ("annotation", "returns", "decorator_list", "type_params"):
                continue
            if isinstance(node, ast.keyword) and node.arg in ("strict", "example"):
                continue
            for each in value if isinstance(value, list) else [value]:
                if isinstance(each, ast.AST):
                    yield from self.walk(each)

    def of_statement(self, node: ast.stmt) -> Iterator[Mutant]:
        match node:
            case ast.Return(value=ast.expr() as value) if not (isinstance(value, ast.Constant)):
                yield from self.of_return(node, value)
            case ast.If(test=test):
                yield from self.instead(test, "condition", "True", "False")
            case ast.While(test=test):
                yield from self.instead(test, "condition", "False")
            case ast.Continue():
                yield from self.instead(node, "jump", "break", "pass")
            case ast.Break():
                yield from self.instead(node, "jump", "continue")
            case ast.AugAssign(target=target, op=op, value=value) if type(op) in ARITHMETIC:
                was, now = ARITHMETIC[type(op)]
                yield from self.operator(target, value, f"{was}=", f"{now}=", "arithmetic")
                yield from self.instead(node, "deleted", "pass")
            case ast.Expr(value=ast.Call()) | ast.Raise():
                yield from self.instead(node, "deleted", "pass")
            case ast.Assign(targets=[target]) if not self.at_import and self.is_kept_without(target):
                yield from self.instead(node, "deleted", "pass")

    def is_kept_without(self, target: ast.expr) -> bool:
        """Whether every name that an assignment binds is bound elsewhere too."""
        if isinstance(target, ast.Name):
            return self.bound[target.id] > 1
        if isinstance(target, ast.Tuple):
            return all(self.is_kept_without(each) for each in target.elts)
        return isinstance(target, ast.Attribute | ast.Subscript)

    def of_return(self, node: ast.Return, value: ast.expr) -> Iterator[Mutant]:
        truth = isinstance(value, ast.Compare | ast.BoolOp) or (
            isinstance(value, ast.UnaryOp) and isinstance(value.op, ast.Not)
        )
        if node.lineno == node.end_lineno:
            text = self.lines[node.lineno - 1][self.column(value.lineno, value.col_offset) :]
            yield from self.instead(node, "return", f"return not ({text})" if truth else "return None")
        else:
            start = self.column(node.lineno, node.col_offset)
            yield self.mutant("return", node.lineno, start, start + 6, "return not" if truth else "return None and")

    def of_expression(self, node: ast.AST) -> Iterator[Mutant]:
        match node:
            case ast.Constant(value=bool() as value):
                yield from self.instead(node, "constant", str(not value))
            case ast.Constant(value=int() | float() as value):
                yield from self.instead(node, "constant", repr(value + 1))
            case ast.Compare(left=left, ops=ops, comparators=comparators):
                for first, op, second in zip((left, *comparators), ops, comparators, strict=False):
                    was, now = COMPARISONS[type(op)]
                    if was[0] in "<>" and any(_is_blurred(each) for each in (first, second)):
                        continue
                    yield from self.operator(first, second, was, now, "comparison")
            case ast.BoolOp(op=op, values=values):
                was, now = ("and", "or") if isinstance(op, ast.And) else ("or", "and")
                for first, second in pairwise(values):
                    yield from self.operator(first, second, was, now, "and-or")
            case ast.BinOp(left=left, op=op, right=right) if type(op) in ARITHMETIC:
                if not any(_is_text(each) for each in (left, right)):
                    was, now = ARITHMETIC[type(op)]
                    yield from self.operator(left, right, was, now, "arithmetic")
            case ast.UnaryOp(op=ast.Not() | ast.USub(), operand=operand) if node.lineno == operand.lineno:
                start, end = (self.column(each.lineno, each.col_offset) for each in (node, operand))
                yield self.mutant("not", node.lineno, start, end, "")
            case ast.Call(func=ast.Name(id=name) as called) if name in OPPOSITE_CALLS:
                yield from self.instead(called, "min-max", OPPOSITE_CALLS[name])
            case ast.IfExp(test=test):
                yield from self.instead(test, "condition", "True", "False")
            case ast.comprehension(ifs=ifs):
                for test in ifs:
                    yield from self.instead(test, "condition", "True", "False")

    def operator(self, left: ast.expr, right: ast.expr, was: str, now: str, kind: str) -> Iterator[Mutant]:
        pattern = re.compile(rf"\b{was.replace(' ', ' +')}\b" if was.isidentifier() or " " in was else re.escape(was))
        last = left.end_lineno or left.lineno
        for number in range(last, right.lineno + 1):
            text = self.lines[number - 1]
            start = self.column(number, left.end_col_offset or 0) if number == last else 0
            end = self.column(number, right.col_offset) if number == right.lineno else len(text)
            hit = pattern.search(text[:end].split("#")[0] if number != right.lineno else text[:end], start)
            if hit:
                yield self.mutant(kind, number, hit.start(), hit.end(), now)
                return

    def instead(self, node: ast.AST, kind: str, *texts: str) -> Iterator[Mutant]:
        if isinstance(node, ast.expr | ast.stmt) and node.lineno == node.end_lineno:
            start = self.column(node.lineno, node.col_offset)
            end = self.column(node.lineno, node.end_col_offset or 0)
            for text in texts:
                yield self.mutant(kind, node.lineno, start, end, text)

    def mutant(self, kind: str, line: int, start: int, end: int, text: str) -> Mutant:
        before = self.lines[line - 1]
        after = before[:start] + text + before[end:]
        names = self.names if self.scope is None else ()
        return Mutant(self.file, line, kind, before, after, self.statement, self.scope, self.at_import, names)

    def column(self, line: int, offset: int) -> int:
        """Characters before an offset that the parser counts in bytes."""
        return len(self.lines[line - 1].encode()[:offset].decode())


def _is_text(node: ast.expr) -> bool:
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))


def _is_blurred(node: ast.expr) -> bool:
    """Whether a value is a tolerance for rounding, or has one added or taken off."""
    match node:
        case ast.Name(id=name):
            return name.lstrip("_").startswith(TOLERANCES)
        case ast.Constant(value=float() as value):
            return 0.0 < value <= MOST_ROUNDED
        case ast.UnaryOp(operand=operand):
            return _is_blurred(operand)
        case ast.BinOp(op=ast.Add() | ast.Sub(), right=right):
            return _is_blurred(right)
    return False
