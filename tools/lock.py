"""Write `requirements/lock.txt` anew: every library at one version, with the hashes of its public files.

One lock holds for Python 3.11 and newer on Linux, macOS and Windows. Versions already locked are kept unless
`--upgrade` is given. Only hashes are written, no addresses: where the files come from, the machine says.
"""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
COMPILE = (
    *("uv", "pip", "compile", "pyproject.toml", "--all-extras", "--group", "dev"),
    *("--universal", "--python-version", "3.11"),
    *("--generate-hashes", "--no-header", "--no-config", "--quiet"),
    *("--output-file", "requirements/lock.txt"),
)


def main() -> None:
    """Run the resolver with the options above and those of the command line."""
    beside_this_python = Path(sys.executable).parent
    command = [str(beside_this_python / COMPILE[0]), *COMPILE[1:], *sys.argv[1:]]
    # A registry set in the environment could have other files, and so other hashes, than the public one.
    plain = {name: value for name, value in os.environ.items() if not name.startswith("UV_")}
    sys.exit(subprocess.run(command, cwd=ROOT, env=plain, check=False).returncode)


if __name__ == "__main__":
    main()
