"""From a job to a layout: what may be covered, which board goes where, how it is cut, what it looks like."""
