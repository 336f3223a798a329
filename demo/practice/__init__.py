"""The tables of the invented practice. Names, marks, numbers and stories are ours; the figures are only plausible ones."""

from demo.practice.home_cats import HOME_CATS
from demo.practice.home_dogs import HOME_DOGS
from demo.practice.partner import PARTNER
from demo.practice.shelter_cats import SHELTER_CATS
from demo.practice.shelter_dogs import SHELTER_DOGS

ANIMALS = (*HOME_CATS, *HOME_DOGS, *SHELTER_CATS, *SHELTER_DOGS, *PARTNER)
