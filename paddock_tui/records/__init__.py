"""What a garage holds: record classes, their fields and shapes, addresses and edits. No input or output."""
