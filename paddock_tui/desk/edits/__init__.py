"""Edits of one record: what a key, a typed text, a remedy or the entry line asks for, each as one step."""
