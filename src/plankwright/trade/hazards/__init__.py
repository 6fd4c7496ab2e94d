"""What can hurt: hazards of a job, each with what is asked, why, and the source."""
