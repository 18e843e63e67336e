"""The rooms of the screen, a module each; `paddock_tui.screens.registry` lists them."""
