"""Lengths as people write them, read exactly or asked about.

Text becomes a row of tokens (numbers, fractions, units, hyphens), the row has a shape, and only shapes with one
meaning are read. Whatever a careful person could read two ways is refused with a sentence that says how to write
each: a wrong guess costs a board, a question costs a minute.
"""

import re
from fractions import Fraction
from typing import ClassVar, NamedTuple, NoReturn

from plankwright.errors import ExitCode, PlankwrightError
from plankwright.measure.length import FINEST_DENOMINATOR, METRE, Nm, Unit

LONGEST: Nm = 1_000 * METRE
"""No board and no wall is longer than a kilometre: a longer length is a slip of the pen."""

_LONGEST_TEXT = 60
_INCHES_IN_A_FOOT = 12

_UNIT_WORDS = {
    "'": Unit.FOOT,
    '"': Unit.INCH,
    **dict.fromkeys(("in", "inch", "inches"), Unit.INCH),
    **dict.fromkeys(("ft", "foot", "feet"), Unit.FOOT),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), Unit.MILLIMETRE),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), Unit.CENTIMETRE),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), Unit.METRE),
}

# Marks that keyboards, spreadsheets and word processors put in place of the plain ones.
_PLAIN_MARKS = str.maketrans(
    {
        **dict.fromkeys("′’‘‛ʹʼ´`＇", "'"),
        **dict.fromkeys("″”“‟„ʺ˝＂", '"'),
        **dict.fromkeys("‐‑‒–—―−", "-"),
        **dict.fromkeys("⁄∕／", "/"),
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
# One letter a token: "7' 3-5/8\"" is n u n h f u.
_SHAPE = re.compile(r"(?:(?P<feet>n(?:h?f)?|f)uh?)?(?P<last>n(?:h?f)?|f)u?")
_TWO_NUMBERS = re.compile(r"nh?n")
_FRACTION_FIRST = re.compile(r"fh?[nf]")


class LengthError(PlankwrightError, ValueError):
    """A text that is not a length, or could be two; the message says how to write it.

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
        shown = "".join(mark if mark.isprintable() else "�" for mark in text[:_LONGEST_TEXT])
        super().__init__(f"“{shown}{'…' if len(text) > _LONGEST_TEXT else ''}” {reason}")

    def __reduce__(self) -> tuple[type["LengthError"], tuple[str, str]]:
        """Rebuild from text and reason, not from the message, when the error comes from another process."""
        return type(self), (self.text, self.reason)


class _Token(NamedTuple):
    kind: str
    text: str


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
    Fractions are halves to 64ths, all of them whole numbers of nanometres. Decimals finer than that are rounded
    once, here, to the nearest nanometre, and from half-way to the even one.
    """
    return _Reader(text, default_unit, decimal_comma=decimal_comma).read()


class _Reader:
    """Reads one text; holds what every step needs to say what is wrong."""

    def __init__(self, text: str, default_unit: Unit | None, *, decimal_comma: bool) -> None:
        self.text = text.strip()
        self.default_unit = default_unit
        self.decimal, self.grouping = (",", ".") if decimal_comma else (".", ",")

    def read(self) -> Nm:
        if not self.text:
            self.refuse(f"(nothing) is not a length: {self.how()}")
        if len(self.text) > _LONGEST_TEXT:
            self.refuse(f"is too long for a length: {self.how()}")
        nm = round(self.assemble(self.tokens()))
        if nm > LONGEST:
            self.refuse("is longer than a kilometre: check the number and its unit")
        return nm

    def refuse(self, reason: str) -> NoReturn:
        raise LengthError(self.text, reason)

    def how(self) -> str:
        return f"""write it like 7' 3-5/8", 87-5/8", 87{self.decimal}625" or 2226 mm"""

    def tokens(self) -> list[_Token]:
        plain = self.text.translate(_PLAIN_MARKS).replace("''", '"').lower().strip()
        tokens, at = [], 0
        while at < len(plain):
            match = _TOKEN.match(plain, at)
            if match is None:
                self.refuse(f"is not a length: {self.how()}")
            kind = match.lastgroup or ""
            tokens.append(_Token(kind, match[kind]))
            at = match.end()
        return tokens

    def assemble(self, tokens: list[_Token]) -> Fraction:
        """Add up what a row of tokens means; one letter a token makes places in shape and row the same."""
        shape = "".join(token.kind for token in tokens)
        match = _SHAPE.fullmatch(shape)
        if match is None:
            self.refuse(self.misshapen(shape))
        last_start, last_end = match.span("last")
        last = self.amount(tokens[last_start:last_end])
        unit = self.unit(tokens[last_end]) if last_end < len(tokens) else None
        if match["feet"] is None:
            return last * (unit or self.unit_of_bare("f" in match["last"])).size_nm
        feet_end = match.end("feet")
        feet = self.amount(tokens[:feet_end])
        if self.unit(tokens[feet_end]) is not Unit.FOOT or unit not in {None, Unit.INCH}:
            self.refuse(f"mixes units other than feet and inches: use one, {self.how()}")
        if feet.denominator != 1:
            self.refuse("has a part of a foot and inches besides: write whole feet and inches, like 7' 3-5/8\"")
        if last >= _INCHES_IN_A_FOOT:
            self.refuse('has a foot or more of inches after the feet, probably a slip: write 0 to 11 whole inches there')
        return feet * Unit.FOOT.size_nm + last * Unit.INCH.size_nm

    def misshapen(self, shape: str) -> str:
        if shape.startswith("h"):
            return f"is negative: a length is zero or more, {self.how()}"
        if _TWO_NUMBERS.search(shape):
            return (
                "has two numbers side by side and could be feet and inches, a fraction or thousands: "
                "write 7' 3\" for feet and inches, 7-3/8\" for a fraction, 2226 mm without a gap"
            )
        if _FRACTION_FIRST.search(shape):
            return 'has a fraction before another number: the fraction comes last, like 5-3/8"'
        return f"is not a length: {self.how()}"

    def unit(self, token: _Token) -> Unit:
        unit = _UNIT_WORDS.get(token.text.removesuffix("."))
        if unit is None:
            self.refuse(f"has an unknown unit, {token.text}: use ' or ft, \" or in, mm, cm or m")
        return unit

    def unit_of_bare(self, has_fraction: bool) -> Unit:
        if self.default_unit is None:
            self.refuse(f"has no unit: put ' or ft, \" or in, mm, cm or m behind it, like {self.text}\" or {self.text} mm")
        if has_fraction and self.default_unit.is_metric:
            self.refuse(
                f"is a fraction without a unit where bare numbers are {self.default_unit}: "
                f'write {self.text}" if it is inches, else a decimal like 87{self.decimal}5 {self.default_unit}'
            )
        return self.default_unit

    def amount(self, tokens: list[_Token]) -> Fraction:
        whole = self.number(tokens[0].text) if tokens[0].kind == "n" else Fraction(0)
        if tokens[-1].kind != "f":
            return whole
        if whole.denominator != 1 or self.decimal in tokens[0].text:
            self.refuse(f"has decimals and a fraction: use one of them, {self.how()}")
        return whole + self.fraction(tokens[-1].text)

    def fraction(self, token: str) -> Fraction:
        top, bottom = map(int, token.split("/"))
        if bottom < 2 or bottom > FINEST_DENOMINATOR or bottom & (bottom - 1):
            self.refuse(f"has a fraction that is on no tape: use halves, quarters, 8ths, 16ths, 32nds or 64ths, or {self.how()}")
        if top >= bottom:
            whole, rest = divmod(top, bottom)
            better = f"{whole}-{rest}/{bottom}" if rest else f"{whole}"
            self.refuse(f"has a fraction of one or more, {top}/{bottom}, perhaps a slip: if it is meant, {top}/{bottom} is {better}")
        return Fraction(top, bottom)

    def number(self, token: str) -> Fraction:
        decimal, grouping = re.escape(self.decimal), re.escape(self.grouping)
        if re.fullmatch(rf"[0-9]+|[0-9]*{decimal}[0-9]+", token):
            return Fraction(token.replace(self.decimal, "."))
        if re.fullmatch(rf"[1-9][0-9]{{0,2}}(?:(?:{grouping}[0-9]{{3}})+{decimal}[0-9]+|(?:{grouping}[0-9]{{3}}){{2,}})", token):
            return Fraction(token.replace(self.grouping, "").replace(self.decimal, "."))
        mark = "comma" if self.grouping == "," else "point"
        if re.fullmatch(rf"[0-9]+{grouping}[0-9]+", token):
            joined = self.text.replace(token, token.replace(self.grouping, ""), 1)
            parted = self.text.replace(token, token.replace(self.grouping, self.decimal), 1)
            self.refuse(
                f"can be read two ways: write {joined} if the {mark} parts thousands, {parted} if it is the decimal mark"
            )
        self.refuse(f"has a number that cannot be read, {token}: {self.how()}")
