"""What is printed: the answer and the map, the cut list for the saw, the hanging sheet for the wall."""
