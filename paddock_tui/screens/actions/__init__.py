"""The actions that open no room of their own, by theme; `paddock_tui.screens.registry` lists them."""
