"""Getting boards ready: what is done to a board before it is cut, in which order, with which tool."""
