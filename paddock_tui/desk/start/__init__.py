"""The guided start: what is asked of whom, which record each answer goes into, and where it goes on."""
