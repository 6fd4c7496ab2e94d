"""The same command where none is installed: `python -m plankwright`."""

from plankwright.cli import main

if __name__ == "__main__":
    main()
