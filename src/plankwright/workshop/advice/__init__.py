"""What the trade's knowledge comes to for a job, an answer a module: judged as values, told as a leaf."""
