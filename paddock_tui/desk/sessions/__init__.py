"""Sessions and profiles: the next one, one like another, the ledger, the next change."""
