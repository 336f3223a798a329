"""Pictures of every screen and state in each look. Nothing that is delivered imports it, and it imports no tests."""
