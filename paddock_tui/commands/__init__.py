"""The command line: the same pages as text, the same steps as words. Loads no screen."""
