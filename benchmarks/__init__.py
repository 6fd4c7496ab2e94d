"""How well the search does: instances, baselines and the report. See docs/benchmarks.md."""
