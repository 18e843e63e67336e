"""What is measured, each by a module that anybody can run: `python -m tests.bench NAME`."""
