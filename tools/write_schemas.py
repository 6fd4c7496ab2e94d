"""Write `docs/schemas/` from the definitions of the documents, so that schemas and program never differ.

python tools/write_schemas.py
"""

from pathlib import Path

from plankwright.files.disk import write_files
from plankwright.files.schemas import schemas

FOLDER = Path(__file__).resolve().parent.parent / "docs" / "schemas"


def main() -> None:
    """Write every schema anew."""
    write_files({FOLDER / name: text for name, text in schemas().items()})


if __name__ == "__main__":
    main()
