"""Jobs that are kept and changed step by step, as a person works on them; every step can be taken back."""
