"""How the house is built: floors, names, sizes, purity. A test here reads source files and never runs what they say."""
