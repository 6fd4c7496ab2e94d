"""What the trade knows: moisture, fasteners, boxes and edges, lumber measure, getting ready, hazards.

A room a subject. In each, `facts` holds the constants beside their sources, the other modules the formulas.
Nothing here knows of jobs or layouts: what a formula means for a job is worked out in the workshop.
"""
