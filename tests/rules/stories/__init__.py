"""Stories of several outings: what went before, and what the next one is judged to be."""
