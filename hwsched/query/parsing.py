"""Reading a query: one word looked ahead, each rule of the grammar a method of its own.

::

    query   = [ either ]
    either  = both { "or" both }
    both    = term { "and" term }
    term    = "not" term | "(" either ")" | "uses" value | [ "every" ] fact compare | word { word }
    compare = sign value | "in" value { "," value } | "contains" value | "between" value "and" value
            | "is" ( "known" | "unknown" )
"""

from dataclasses import dataclass
from typing import Final, Literal

from hwsched.attributes import CellError, accepted_by
from hwsched.query.asking import (
    COMPARING,
    ORDERING,
    SIGNS,
    WORD_SIGNS,
    Asked,
    Compare,
    Joined,
    Node,
    Not,
    Query,
    Sign,
    Words,
)
from hwsched.query.facts import FINDING, KEYWORDS, USES, WAIVED, Askable, Fact
from hwsched.query.judging import order_of
from hwsched.query.refusal import Fault, QueryError, Remark
from hwsched.query.scanning import Token, tokens
from hwsched.telling.nearest import nearest

LONGEST: Final = 4000
"""Characters of a query."""
DEEPEST: Final = 40
"""Brackets and ``not`` within each other."""
Breaking = Literal["term", "run", "is", "value", "joint"]
_TERM: Final = ("a fact", "a word to look for", "not", "(")


@dataclass(frozen=True, slots=True)
class Open:
    """What the text breaks off in: what may follow is what completes it."""

    kind: Breaking
    start: int
    """From where on it is replaced."""
    fact: Fact | None = None
    sign: str = ""
    depth: int = 0
    """Brackets that are open."""
    every: bool = False


def parse(text: str, askable: Askable) -> Query:
    """Read a query.

    Parameters
    ----------
    text : str
        As typed; blank asks for nothing.
    askable : Askable
        What can be asked for.

    Raises
    ------
    QueryError
        Where it cannot be read; with the place, what stands there and what could.

    Examples
    --------
    >>> str(parse("Leaf thickness>1 3/4 and (rating is known or mill)", Askable(bare_unit="in")))
    'leaf.thickness > 1 3/4 and (rating is known or mill)'
    """
    reader = Reader(text, askable)
    return Query(text, reader.query(), tuple(reader.remarks), askable.length_style)


def signs_typed(fact: Fact) -> tuple[str, ...]:
    """Return the signs that can stand after a fact, as they are typed."""
    return tuple(sign if sign not in ("known", "unknown") else f"is {sign}" for sign in signs(fact))


def signs(fact: Fact) -> tuple[Sign, ...]:
    """Return how a fact can be compared."""
    if fact == USES:
        return COMPARING
    found: tuple[Sign, ...] = (*COMPARING, *(ORDERING if fact.ordered else ()))
    found = (*found, "contains") if fact.searched else found
    return found if fact.listed else (*found, "known", "unknown")


class Reader:
    """Reads one query.

    Parameters
    ----------
    text : str
        As typed.
    askable : Askable
        What can be asked for.
    """

    def __init__(self, text: str, askable: Askable) -> None:
        self.text = text
        self.askable = askable
        self.remarks: list[Remark] = []
        self.open: Open | None = None
        """What the end of the text stands in; to be asked after `query`, whether it ended well or not."""
        self._at = 0
        self._depth = 0
        self._brackets = 0
        if len(text) > LONGEST:
            message = f"the text is too long: {len(text)} characters, at most {LONGEST}"
            raise self._fault_at(LONGEST, len(text), message)
        self._tokens = tokens(text)

    def query(self) -> Node | None:
        """Read the whole text; raises QueryError."""
        if self._peek().kind == "end":
            self._leave("term")
            return None
        root = self._either()
        if self._peek().kind != "end":
            raise self._fault(f"{self._said(self._peek())} does not belong here", self._joints)
        return root

    # --- what stands next -------------------------------------------------------------------------------------------

    def _peek(self) -> Token:
        return self._tokens[self._at]

    def _take(self) -> Token:
        token = self._peek()
        self._at += 1
        return token

    def _is(self, *words: str) -> bool:
        """Tell whether one of these words of the language stands next."""
        return self._peek().kind == "word" and self._peek().text.casefold() in words

    @property
    def _joints(self) -> tuple[str, ...]:
        return ("and", "or", ")") if self._brackets else ("and", "or")

    @property
    def _ends_run(self) -> bool:
        """Whether what stands next ends a row of words."""
        return self._peek().kind not in ("word", "quoted") or self._is("and", "or")

    def _leave(
        self, kind: Breaking, *, start: int | None = None, fact: Fact | None = None, sign: str = "", every: bool = False
    ) -> None:
        """Note what the text breaks off in, where it does."""
        if self._peek().kind == "end":
            place = self._peek().start if start is None else start
            self.open = Open(kind, place, fact, sign, self._brackets, every)

    # --- the rules of the grammar -----------------------------------------------------------------------------------

    def _either(self) -> Node:
        return self._joined("or")

    def _joined(self, by: Literal["and", "or"]) -> Node:
        found = [self._part(by)]
        while self._is(by):
            self._take()
            found.append(self._part(by))
        return found[0] if len(found) == 1 else Joined(by, tuple(found))

    def _part(self, by: Literal["and", "or"]) -> Node:
        return self._term() if by == "and" else self._joined("and")

    def _term(self) -> Node:
        self._leave("term")
        if self._peek().kind == "(":
            return self._bracketed()
        # A word of the language before a sign is the name of a fact that is called so.
        if not self._fact_named():
            if self._is("not"):
                return self._not()
            if self._is("uses"):
                self._take()
                return Compare(USES, "=", (self._value(USES, "uses"),))
            if self._is("every"):
                self._take()
                self._leave("term", every=True)
                return self._about_fact(every=True)
        return self._about_fact(every=False)

    def _not(self) -> Node:
        self._go_deeper(self._take())
        found = Not(self._term())
        self._depth -= 1
        return found

    def _bracketed(self) -> Node:
        self._go_deeper(self._take())
        self._brackets += 1
        found = self._either()
        if self._peek().kind != ")":
            message = "the bracket ( is not closed" if self._peek().kind == "end" else self._out_of_place
            raise self._fault(message, ("and", "or", ")"))
        self._take()
        self._brackets -= 1
        self._depth -= 1
        self._leave("joint")
        return found

    def _go_deeper(self, token: Token) -> None:
        self._depth += 1
        if self._depth > DEEPEST:
            message = f"brackets and not stand more than {DEEPEST} deep within each other"
            raise self._fault_at(token.start, token.end, message)

    def _fact_named(self) -> bool:
        """Tell whether what stands next has a sign after it."""
        if self._peek().kind == "end":
            return False
        token = self._tokens[self._at + 1]
        return token.kind == "sign" or (token.kind == "word" and token.text.casefold() in WORD_SIGNS)

    @property
    def _out_of_place(self) -> str:
        return f"{self._said(self._peek())} does not belong here"

    def _about_fact(self, *, every: bool) -> Node:
        """Read a fact with what is asked of it, or words that stand alone."""
        run: list[Token] = []
        if self._is(*KEYWORDS) and self._fact_named():
            run.append(self._take())
        while not self._ends_run and not self._is(*KEYWORDS):
            run.append(self._take())
        if not run:
            message = "something is missing at the end"
            if self._is(*KEYWORDS) and not self._is("and", "or"):
                message = f"{self._said(self._peek())} is a word of the language here; in quotes it is looked for"
            elif self._peek().kind != "end":
                message = f"something is missing before {self._said(self._peek())}"
            raise self._fault(message, _TERM)
        self._leave("run", start=run[0].start, every=every)
        if self._peek().kind == "sign" or self._is(*WORD_SIGNS):
            return self._compared(self._fact_of(run), run, every=every)
        if every:
            fact = self.askable.fact(" ".join(token.text for token in run))
            raise self._fault("after every stands a fact and what is asked of it", signs_typed(fact) if fact else ())
        return Words(tuple(token.text for token in run))

    def _fact_of(self, run: list[Token]) -> Fact:
        name = " ".join(token.text for token in run)
        fact = self.askable.fact(name)
        if fact is not None:
            return fact
        for first in range(1, len(run)):
            last = " ".join(token.text for token in run[first:])
            if self.askable.fact(last) is not None:
                token = run[first]
                message = f"and or or is missing before '{last}'"
                raise self._fault_at(token.start, run[-1].end, message, ("and", "or"))
        message = f"'{name}' is no fact that can be asked for"
        near = nearest(name, self.askable.said_names())
        raise self._fault_at(run[0].start, run[-1].end, message, ("a fact",), near)

    def _compared(self, fact: Fact, run: list[Token], *, every: bool) -> Node:
        if every and not fact.of_rows:
            message = f"every goes with facts of leaves and items; an opening has one {fact.attribute.label}"
            if fact.listed:
                message = f"every goes with facts of leaves and items, not with {fact.name}"
            raise self._fault_at(run[0].start, run[-1].end, message)
        token = self._take()
        if token.text.casefold() == "is":
            return Compare(fact, self._known(fact), (), every)
        sign = next(each for each in SIGNS if each == token.text.casefold())
        if sign not in signs(fact):
            message = f"{fact.attribute.label} cannot be asked for with {sign}"
            raise self._fault_at(token.start, token.end, message, signs_typed(fact))
        if sign == "in":
            values = [self._value(fact, sign)]
            while self._peek().kind == ",":
                self._take()
                values.append(self._value(fact, sign))
            return Compare(fact, sign, tuple(values), every)
        if sign == "between":
            return self._between(fact, token, every=every)
        asked = self._value(fact, sign)
        if asked.value is None:
            return Compare(fact, "unknown" if sign == "=" else "known", (), every)
        if sign == "!=" and fact.listed:
            return Not(Compare(fact, "=", (asked,)))
        return Compare(fact, sign, (asked,), every)

    def _between(self, fact: Fact, sign: Token, *, every: bool) -> Node:
        low = self._value(fact, "between")
        if not self._is("and"):
            raise self._fault("between needs two values", ("and",))
        self._take()
        high = self._value(fact, "between")
        key = order_of(fact)
        if key(high.value) < key(low.value):
            message = f"nothing lies between {low.text} and {high.text}: the lower value goes first"
            end = self._tokens[self._at - 1].end
            raise self._fault_at(sign.start, end, message)
        return Compare(fact, "between", (low, high), every)

    def _known(self, fact: Fact) -> Sign:
        self._leave("is", fact=fact)
        allowed = [sign for sign in signs(fact) if sign in ("known", "unknown")]
        for sign in allowed:
            if self._is(sign):
                self._take()
                self._leave("joint")
                return sign
        message = "after is stands known or unknown; a value stands after ="
        if not allowed:
            message = f"{fact.attribute.label} cannot be asked for with is"
        raise self._fault(message, tuple(allowed) or signs_typed(fact))

    # --- values -----------------------------------------------------------------------------------------------------

    def _value(self, fact: Fact, sign: str) -> Asked:
        self._leave("value", fact=fact, sign=sign)
        if self._ends_run:
            raise self._fault(
                f"a value is missing after {sign}" if self._peek().kind == "end" else self._out_of_place,
                (accepted_by(fact.attribute),),
            )
        run = [self._take()]
        while not self._ends_run:
            if "quoted" in (run[0].kind, self._peek().kind):
                raise self._fault(f"{self._said(self._peek())} stands beside a value in quotes", self._joints)
            run.append(self._take())
        self._leave("value", start=run[0].start, fact=fact, sign=sign)
        if self._peek().kind == "," and sign != "in":
            raise self._fault("several values stand after in; a value with a comma stands in quotes", ("in", '"'))
        if self._peek().kind == "(":
            raise self._fault("a value with a bracket stands in quotes", self._joints)
        return self._read(fact, sign, " ".join(token.text for token in run), run[0].start, run[-1].end)

    def _read(self, fact: Fact, sign: str, text: str, start: int, end: int) -> Asked:
        def refused(message: str, expected: tuple[str, ...] = (), near: tuple[str, ...] = ()) -> QueryError:
            return self._fault_at(start, end, message, expected, near)

        if sign == "contains":
            if not text.strip():
                raise refused("a piece of text is missing after contains")
            return Asked(text, text)
        try:
            value = self.askable.reader(fact)(text)
        except CellError as error:
            words = [word for each in fact.attribute.choices for word in (each.value, each.label, *each.synonyms)]
            raise refused(f"read '{error.read}': {error.message}", (error.accepted,), nearest(text, words)) from None
        if value is None and (fact.listed or sign not in ("=", "!=", "in")):
            raise refused("unknown cannot be asked for here", (accepted_by(fact.attribute),))
        names = self.askable.names(fact)()
        known = {name.casefold() for name in names}
        if isinstance(value, str) and known and value.casefold() not in known:
            near = nearest(value, names)
            if fact in (FINDING, WAIVED):
                message = f"there is no rule {text}"
                raise refused(message, ("the identifier of a rule", "error", "warning", "note"), near)
            what = "part" if fact == USES else fact.attribute.label.casefold()
            self.remarks.append(Remark(start, end, f"the project has no {what} {text}", near))
        return Asked(value, text)

    # --- what is refused --------------------------------------------------------------------------------------------

    def _said(self, token: Token) -> str:
        return f"'{self.text[token.start : token.end]}'" if token.kind != "end" else ""

    def _fault(self, message: str, expected: tuple[str, ...] = ()) -> QueryError:
        """Return the refusal of what stands next."""
        return self._fault_at(self._peek().start, self._peek().end, message, expected)

    def _fault_at(
        self, start: int, end: int, message: str, expected: tuple[str, ...] = (), near: tuple[str, ...] = ()
    ) -> QueryError:
        return QueryError(self.text, Fault(start, end, self.text[start:end], message, expected, near))
