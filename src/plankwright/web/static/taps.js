// A tap on a drawing fills in where it was.
