"""What earlier builds left in the world: of each, one zip with a small record, the bundle that filled it, and its built client."""
