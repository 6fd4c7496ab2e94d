"""The printing press: a template and its data become a PDF file, the same bytes on every machine."""

import json
from collections.abc import Mapping
from pathlib import Path

import typst

_ROOM = Path(__file__).parent
_TEMPLATES = _ROOM / "templates"
_FONTS = _ROOM / "fonts"


def press(template: str, data: Mapping[str, object]) -> bytes:
    """Set a document.

    The data reach the template as one JSON text, never as part of its code, so that nothing a user wrote can
    be taken for markup. Only fonts that come with the program are used, and no date is put in.

    Parameters
    ----------
    template
        Name of a file among the templates, without its ending.
    data
        What the template reads; anything that JSON can hold.

    Returns
    -------
    bytes
        A PDF file.
    """
    return typst.compile(
        _TEMPLATES / f"{template}.typ",
        root=_TEMPLATES,
        font_paths=[_FONTS],
        ignore_system_fonts=True,
        format="pdf",
        sys_inputs={"data": json.dumps(data, ensure_ascii=False)},
    )
