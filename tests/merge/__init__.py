"""Tests of the merge by fact."""
