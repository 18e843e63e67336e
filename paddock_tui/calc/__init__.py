"""What is calculated: pure functions of floats, the unit in every name. No input or output."""
