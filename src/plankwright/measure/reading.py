"""Lengths as people write them, read exactly or asked about.

Text becomes a row of tokens (numbers, fractions, units, hyphens), the row has a shape, and only shapes with
one meaning are read. What a careful person could read two ways is refused with a sentence that says how to
write each: a wrong guess costs a board, a question costs a minute.
"""

import re
from fractions import Fraction
from typing import ClassVar, NamedTuple

from plankwright.errors import ExitCode, PlankwrightError
from plankwright.measure.length import FINEST_DENOMINATOR, METRE, Nm, Unit

LONGEST: Nm = 1_000 * METRE
"""A length over a kilometre is a slip of the pen: no board and no wall is that long. [nm]"""

_LONGEST_TEXT = 60
_INCHES_IN_A_FOOT = 12
_TAPE_FRACTIONS = {2**power for power in range(1, FINEST_DENOMINATOR.bit_length())}

_UNIT_WORDS = {
    "'": Unit.FOOT,
    '"': Unit.INCH,
    **dict.fromkeys(("in", "inch", "inches"), Unit.INCH),
    **dict.fromkeys(("ft", "foot", "feet"), Unit.FOOT),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), Unit.MILLIMETRE),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), Unit.CENTIMETRE),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), Unit.METRE),
}

# What keyboards, spreadsheets and word processors put in place of the plain marks. The escapes are quotes,
# dashes and slashes that no eye tells from their plain neighbours.
_PLAIN_MARKS = str.maketrans(
    {
        **dict.fromkeys("′’\u2018\u00b4\u02b9\u02bc`", "'"),
        **dict.fromkeys("″“”\u02ba\u02dd", '"'),
        **dict.fromkeys("–—−\u2010\u2011\u2012", "-"),
        **dict.fromkeys("\u2044\u2215", "/"),
        "½": " 1/2 ",
        "¼": " 1/4 ",
        "¾": " 3/4 ",
        "⅛": " 1/8 ",
        "⅜": " 3/8 ",
        "⅝": " 5/8 ",
        "⅞": " 7/8 ",
        "⅓": " 1/3 ",
        "⅔": " 2/3 ",
    }
)

_TOKEN = re.compile(
    r"""\s*(?:
        (?P<f>[0-9]+\s*/\s*[0-9]+)     # a fraction
      | (?P<n>[0-9.,]*[0-9])           # a number
      | (?P<u>[a-z]+\.?|['"])          # a unit
      | (?P<h>-)                       # a hyphen
    )\s*""",
    re.VERBOSE,
)
# A shape has one letter a token, so places in shape and row are the same: 7' 3-5/8" is n u n h f u.
_SHAPE = re.compile(r"(?:(?P<feet>n(?:h?f)?|f)uh?)?(?P<last>n(?:h?f)?|f)u?")
_TWO_NUMBERS = re.compile(r"nh?n")
_FRACTION_FIRST = re.compile(r"fh?[nf]")


class LengthError(PlankwrightError, ValueError):
    """A text that is no length, or could be two; the message says how to write it.

    Parameters
    ----------
    text
        What was to be read.
    reason
        Why it cannot be read and how to write it; follows the quoted text in the message.
    """

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT

    def __init__(self, text: str, reason: str) -> None:
        self.text = text
        self.reason = reason
        shown = "".join(mark if mark.isprintable() else "?" for mark in text[:_LONGEST_TEXT])
        super().__init__(f"“{shown}{'…' if len(text) > _LONGEST_TEXT else ''}” {reason}")

    def __reduce__(self) -> tuple[type["LengthError"], tuple[str, str]]:
        """Rebuild from text and reason, not from the message, when the error comes from another process."""
        return type(self), (self.text, self.reason)


def read_length(text: str, *, default_unit: Unit | None, decimal_comma: bool = False) -> Nm:
    """Read a length as people write it, exactly.

    Parameters
    ----------
    text
        Such as `7' 3-5/8"`, `7 ft 3 5/8`, `87-5/8"`, `87.625 in`, `2226 mm` or `2.226 m`.
    default_unit
        Unit of a number that has none; None where every length must name its own.
    decimal_comma
        Whether the comma is the decimal mark and the point parts thousands; else the other way round.

    Returns
    -------
    The length. [nm]

    Raises
    ------
    LengthError
        If the text is no length, could be two, is negative or longer than a kilometre.

    Notes
    -----
    Fractions are halves to 64ths, each a whole number of nanometres. Decimals finer than a nanometre are
    rounded once, here, to the nearest one, and from half-way to the even one.
    """
    decimal, grouping = (",", ".") if decimal_comma else (".", ",")
    return _Reader(text.strip(), default_unit, decimal=decimal, grouping=grouping).read()


class _Token(NamedTuple):
    """A word of a length and what it is: n, f, u or h."""

    kind: str
    text: str


class _Reader:
    """Reads one text, and holds what every step needs to say what is wrong with it."""

    def __init__(self, text: str, default_unit: Unit | None, *, decimal: str, grouping: str) -> None:
        self.text = text
        self.default_unit = default_unit
        self.decimal = decimal
        self.grouping = grouping

    def read(self) -> Nm:
        if not self.text:
            raise self.refusal("is empty")
        if len(self.text) > _LONGEST_TEXT:
            raise self.refusal("is too long for a length")
        nm = round(self.assemble(self.tokens()))
        if nm > LONGEST:
            raise self.refusal("is longer than a kilometre", "check the number and its unit")
        return nm

    def refusal(self, trouble: str, mend: str | None = None) -> LengthError:
        usual = f"""write it like 7' 3-5/8", 87-5/8", 87{self.decimal}625" or 2226 mm"""
        return LengthError(self.text, f"{trouble}: {mend or usual}")

    def tokens(self) -> list[_Token]:
        plain = self.text.translate(_PLAIN_MARKS).replace("''", '"').lower()
        tokens: list[_Token] = []
        at = 0
        while at < len(plain):
            match = _TOKEN.match(plain, at)
            if match is None or match.lastgroup is None:
                raise self.refusal("is not a length")
            tokens.append(_Token(match.lastgroup, match[match.lastgroup]))
            at = match.end()
        return tokens

    def assemble(self, tokens: list[_Token]) -> Fraction:
        """Add up what a row of tokens means. [nm]"""
        shape = "".join(token.kind for token in tokens)
        match = _SHAPE.fullmatch(shape)
        if match is None:
            raise self.misshapen(shape)
        start, end = match.span("last")
        last = self.amount(tokens[start:end])
        unit = self.unit(tokens[end].text) if end < len(tokens) else None
        if match["feet"] is None:
            return last * (unit or self.unit_of_bare(fractional=match["last"].endswith("f"))).size_nm
        feet_end = match.end("feet")
        feet = self.amount(tokens[:feet_end])
        if (self.unit(tokens[feet_end].text), unit or Unit.INCH) != (Unit.FOOT, Unit.INCH):
            raise self.refusal("mixes units", "only feet with inches behind go together, so write one unit")
        if feet.denominator != 1:
            raise self.refusal("has a part of a foot and inches too", "write whole feet, then the inches")
        if last >= _INCHES_IN_A_FOOT:
            raise self.refusal(
                "has a foot or more of inches behind the feet, probably a slip",
                "write less than 12 inches there",
            )
        return feet * Unit.FOOT.size_nm + last * Unit.INCH.size_nm

    def misshapen(self, shape: str) -> LengthError:
        if shape.startswith("h"):
            return self.refusal("is negative", "a length is zero or more, so write it without the minus")
        if _TWO_NUMBERS.search(shape):
            return self.refusal(
                "has two numbers side by side, which could be feet and inches, a fraction or thousands",
                """write 7' 3" for feet and inches, 7-3/8" for a fraction, 2226 mm without a gap""",
            )
        if _FRACTION_FIRST.search(shape):
            return self.refusal(
                "has a fraction before another number", 'write the fraction last, like 5-3/8"'
            )
        return self.refusal("is not a length")

    def unit(self, word: str) -> Unit:
        unit = _UNIT_WORDS.get(word.removesuffix("."))
        if unit is None:
            raise self.refusal(f"has an unknown unit, {word}", "write ' or ft, \" or in, mm, cm or m")
        return unit

    def unit_of_bare(self, *, fractional: bool) -> Unit:
        """Choose the unit of a number that has none."""
        unit = self.default_unit
        inches = f'write {self.text}" if it is inches'
        if unit is None:
            other = f"{self.text}'" if fractional else f"{self.text} mm"
            raise self.refusal(
                "has no unit", f"{inches}, {other} if it is {'feet' if fractional else 'millimetres'}"
            )
        if fractional and unit.is_metric:
            # Nobody reads eighths off a metric tape, so this is a row in inches that lost its mark.
            example = f"87{self.decimal}5 {unit}"
            raise self.refusal(
                f"is a fraction where a number without unit is {unit}",
                f"{inches}, or decimals like {example}",
            )
        return unit

    def amount(self, tokens: list[_Token]) -> Fraction:
        """Read a number, a fraction, or one and the other."""
        head, tail = tokens[0], tokens[-1]
        if tail.kind == "n":
            return self.number(tail.text)
        if head.kind == "f":
            return self.fraction(head.text)
        whole = self.number(head.text)
        if not head.text.isdecimal():
            raise self.refusal(
                "has decimals and a fraction too", f'write one of them, like 87-5/8" or 87{self.decimal}625"'
            )
        return whole + self.fraction(tail.text)

    def fraction(self, token: str) -> Fraction:
        top, bottom = map(int, token.split("/"))
        if bottom not in _TAPE_FRACTIONS:
            raise self.refusal(
                "has a fraction that is on no tape",
                "write halves, quarters, 8ths, 16ths, 32nds or 64ths, or decimals",
            )
        if top >= bottom:
            whole, rest = divmod(top, bottom)
            better = f"{whole}-{rest}/{bottom}" if rest else f"{whole}"
            raise self.refusal(
                "has a fraction of one or more, probably a slip",
                f"{top}/{bottom} is {better}, so write that, or a gap before the fraction, like 7 3/8",
            )
        return Fraction(top, bottom)

    def number(self, token: str) -> Fraction:
        decimal, grouping = re.escape(self.decimal), re.escape(self.grouping)
        if re.fullmatch(rf"[0-9]+|[0-9]*{decimal}[0-9]+", token):
            return Fraction(token.replace(self.decimal, "."))
        if re.fullmatch(rf"[1-9][0-9]{{0,2}}{grouping}[0-9]{{3}}{decimal}[0-9]+", token):
            return Fraction(token.replace(self.grouping, "").replace(self.decimal, "."))
        mark, other = ("comma", "point") if self.grouping == "," else ("point", "comma")
        with_decimal = self.text.replace(token, token.replace(self.grouping, self.decimal), 1)
        if re.fullmatch(rf"[1-9][0-9]{{0,2}}{grouping}[0-9]{{3}}", token):
            without = self.text.replace(token, token.replace(self.grouping, ""), 1)
            raise self.refusal(
                "can be read two ways",
                f"write {without} if the {mark} parts thousands, {with_decimal} if it is the decimal mark",
            )
        if re.fullmatch(rf"[0-9]*{grouping}[0-9]+", token):
            raise self.refusal(
                f"has a {mark} for decimals where the {other} is the decimal mark", f"write {with_decimal}"
            )
        raise self.refusal(f"has a number that cannot be read, {token}")
