"""Jobs in one SQLite file: kept, changed step by step, taken back, backed up and restored."""

from plankwright.store.backup import back_up, restore
from plankwright.store.book import Book, open_book
from plankwright.store.trouble import StoreError

__all__ = ["Book", "StoreError", "back_up", "open_book", "restore"]
