"""What the records lead to: starting figures, what to expect, what was learnt, each with its working."""
