"""What each screen shows, as rows: the same pages are drawn by the board and printed by the commands."""
