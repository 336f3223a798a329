"""The demo's own letters and its start."""
