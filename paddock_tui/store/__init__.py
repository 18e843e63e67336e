"""Files: read, patched, verified, saved."""
