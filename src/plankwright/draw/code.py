"""A code to scan, that holds words or an address."""

import io

import segno


def code_svg(said: str, *, ground: str | None = None) -> str:
    """Draw a code that phones read.

    Parameters
    ----------
    said
        What it holds.
    ground
        Colour of the sheet that it carries along; on paper it needs none.

    Returns
    -------
    str
        SVG as it is set into a page, as wide as what it stands in.
    """
    out = io.BytesIO()
    look = {} if ground is None else {"light": ground}
    segno.make(said, error="m", micro=False).save(
        out, kind="svg", border=4, xmldecl=False, svgns=True, omitsize=True, **look
    )
    return out.getvalue().decode("utf-8")
