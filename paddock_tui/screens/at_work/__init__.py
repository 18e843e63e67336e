"""What rooms and actions do, by the room: loaded once a page is shown or a key asks for it."""
