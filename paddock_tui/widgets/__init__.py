"""What stands on the terminal: the board that draws pages, and what keeps a bad link from doing harm."""
