"""The screens: one board, the rooms it shows, and what keys and answers do."""
