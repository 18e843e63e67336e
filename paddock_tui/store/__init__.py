"""Files: read, patched, verified, kept."""
