"""What is measured on the instances of a family, and what is made of it: a module for each question."""
