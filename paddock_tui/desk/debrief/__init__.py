"""Back from the track: the rows that are asked for, and the step that each makes."""
