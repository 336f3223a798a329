"""The list of every screen and state. It stands in demo/places, since the pictures of the gallery use the same one and the demo
may not import tests; what is added here are only the names the checks import."""

from demo.places import PLACES, SIGNED_IN, SIGNED_OUT
from demo.walk import Place, Walk, walked

__all__ = ["PLACES", "SIGNED_IN", "SIGNED_OUT", "Place", "Walk", "walked"]
