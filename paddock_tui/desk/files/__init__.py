"""Whole records: made, named, copied, renamed, retired."""
