"""Write `docs/trade.md` from the sources that the program names, so that page and program never differ.

python tools/document_sources.py           write it anew
python tools/document_sources.py --check   fail when it is not current
"""

import sys
from pathlib import Path

from plankwright.trade.library import sources_by_room

PAGE = Path(__file__).resolve().parent.parent / "docs" / "trade.md"
HEAD = (Path(__file__).resolve().parent / "trade_page_head.md").read_text(encoding="utf-8")


def page() -> str:
    """Give the page."""
    parts = [HEAD.rstrip("\n")]
    for room, sources in sources_by_room().items():
        parts.append(f"## {room}\n\n| key | where from | followed how far |\n| --- | --- | --- |")
        rows = []
        for source in sources:
            address = f" <{source.address}>." if source.address else ""
            note = f" {source.note}" if source.note else ""
            text = f"{source.title}.{address}{note}".replace("|", "\\|")
            rows.append(f"| `{source.key}` | {text} | {source.trust} |")
        parts[-1] += "\n" + "\n".join(rows)
    return "\n\n".join(parts) + "\n"


def main() -> None:
    """Write the page, or compare with it."""
    if sys.argv[1:] == ["--check"]:
        if PAGE.read_text(encoding="utf-8") != page():
            sys.exit("docs/trade.md is not what the program names: run 'python tools/document_sources.py'")
        return
    PAGE.write_text(page(), encoding="utf-8")


if __name__ == "__main__":
    main()
