"""What a person does, a module each: judge the tally, ask if it is enough, lay out, draw, print, check.

Functions over values of the model; files come in through the ports in `ports`, and nothing here prints.
"""
