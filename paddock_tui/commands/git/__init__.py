"""`git`: one garage on many laptops, merged by fact."""
