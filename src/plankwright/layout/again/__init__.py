"""From a layout and how far it has come to another one, with as little change as can be.

What hangs is a fact; of the rest, whatever can stays. The steps, in the order in which they are taken: what
hangs of each course (`carried`), where the others go (`frames`), what wood there is (`at_hand`), what can
stay (`keeping`), holes mended one look after another (`mending`), heights anew (`reheighting`), and what of
it all is different (`changes`).
"""

from plankwright.layout.again.changes import Change, ChangeKind, changes_between
from plankwright.layout.again.lay_again import lay_again
from plankwright.layout.again.round_corners import links_kept

__all__ = ["Change", "ChangeKind", "changes_between", "lay_again", "links_kept"]
