"""Take the scripts that the pages carry out of their npm packages again, and see that they are the same.

python tools/fetch_page_assets.py           write them anew
python tools/fetch_page_assets.py --check   fail when those that are there are other ones

For a newer version change its number and its sum here, and what LICENCES.txt beside the scripts says of it.
Where packages come from is a matter of each machine's npm.
"""

import hashlib
import shutil
import subprocess
import sys
import tarfile
import tempfile
from dataclasses import dataclass
from pathlib import Path

STATIC = Path(__file__).resolve().parent.parent / "src" / "plankwright" / "web" / "static"


@dataclass(frozen=True, slots=True)
class Asset:
    """A file of a package that the pages carry.

    Parameters
    ----------
    package
        Its name and version.
    inside
        Where the file is in it.
    name
        What it is called here.
    sha256
        Its sum.
    """

    package: str
    inside: str
    name: str
    sha256: str


ASSETS = (
    Asset(
        "htmx.org@2.0.11",
        "package/dist/htmx.min.js",
        "htmx.min.js",
        "d6fdc75f204e6bdefa99b69bf1e6d4ac69b8a364f77929f45c13476b4000f717",
    ),
    Asset(
        "htmx-ext-sse@2.2.4",
        "package/dist/sse.min.js",
        "sse.min.js",
        "98a46496de0c3605fbffdce9167ba427bdd9553184f83f149c261891a92c0136",
    ),
)


def is_as_noted(asset: Asset, content: bytes) -> bool:
    """Tell whether a file is the one that is noted here."""
    return hashlib.sha256(content).hexdigest() == asset.sha256


def content_of(asset: Asset, npm: str) -> bytes:
    """Give a file out of its package."""
    with tempfile.TemporaryDirectory() as folder:
        packing = [npm, "pack", asset.package, "--silent", "--pack-destination", folder]
        packed = subprocess.run(packing, check=True, capture_output=True, text=True)
        with tarfile.open(Path(folder) / packed.stdout.split()[-1]) as archive:
            member = archive.extractfile(asset.inside)
            if member is None:
                sys.exit(f"{asset.package} holds no {asset.inside}")
            return member.read()


def check() -> None:
    """Fail when a file that is there is another one than is noted."""
    other = [asset.name for asset in ASSETS if not is_as_noted(asset, (STATIC / asset.name).read_bytes())]
    if other:
        sys.exit(f"not as noted: {', '.join(other)}; run 'python tools/fetch_page_assets.py'")


def main() -> None:
    """Write the files anew, or compare what is there."""
    if "--check" in sys.argv[1:]:
        check()
        return
    npm = shutil.which("npm")
    if npm is None:
        sys.exit("npm is needed for this, and for nothing else")
    for asset in ASSETS:
        content = content_of(asset, npm)
        if not is_as_noted(asset, content):
            sys.exit(f"{asset.inside} of {asset.package} is not as noted: look why before it is used")
        (STATIC / asset.name).write_bytes(content)
        print(f"{asset.name}: {asset.package}")


if __name__ == "__main__":
    main()
