"""The day: its timetable and countdown, its checklists, the dash card."""
