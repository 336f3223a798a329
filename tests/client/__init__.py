"""Tests of the phone's side. Those in TypeScript run in Node through test_in_node.py."""
