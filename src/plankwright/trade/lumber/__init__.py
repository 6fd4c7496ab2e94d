"""Lumber measure: board feet, surface measure, weight, carbon, and what waste means."""
