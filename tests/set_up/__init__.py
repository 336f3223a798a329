"""Making the repository ready: what is up to date, and which Node will do."""
