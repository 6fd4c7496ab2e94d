"""How Hypothesis draws its examples: alike on every machine, and never judged by the clock."""

from hypothesis import settings

# Drawn from each test's own text, so that a run that passes here passes everywhere; a search among new
# examples is `pytest --hypothesis-profile=default`. No deadline: a busy machine is no fault of the code.
settings.register_profile("repeatable", deadline=None, derandomize=True)
settings.load_profile("repeatable")
