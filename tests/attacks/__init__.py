"""Garages that were made to do harm, odd files, odd clocks and odd disks: a module per kind of attack."""
