"""Data and certified values of the univariate sets of the NIST Statistical Reference Datasets (StRD).

Certified means and standard deviations as NIST prints them. Values are held as whole numbers with the scale beside
them, since the rules take whole numbers.
"""

from __future__ import annotations

# Mavro: 50 filter transmittances; the digits after 2.00, so value = 2 + digits / 10,000.
MAVRO = """
    18 17 18 19 18 17 15 14 15 15 17 18 18 19 19 21 20 16 14 13 13 15 15 16 15 14 13 14 15 14 15 16 15 16 19 20 20
    21 22 23 24 25 27 26 26 26 27 26 25 24
"""
MAVRO_MEAN, MAVRO_SD = "2.00185600000000", "0.000429123454003053"

# Michelso: 100 of Michelson's speeds of light in air, km/s less 299,000.
MICHELSO = """
    850 740 900 1070 930 850 950 980 980 880 1000 980 930 650 760 810 1000 1000 960 960 960 940 960 940 880 800 850
    880 900 840 830 790 810 880 880 830 800 790 760 800 880 880 880 860 720 720 620 860 970 950 880 910 850 870 840
    840 850 840 840 840 890 810 810 820 800 770 760 740 750 760 910 920 890 860 880 720 840 850 850 780 890 840 780
    810 760 810 790 810 820 850 870 870 810 740 810 940 950 800 810 870
"""
MICHELSO_MEAN, MICHELSO_SD = "299.852400000000", "0.0790105478190518"

# NumAcc1: three values; NumAcc2 to 4: k + 0.2 once, then 500 pairs k + 0.1, k + 0.3. Exact by construction.
NUM_ACC_1 = (10_000_001, 10_000_003, 10_000_002)


def num_acc(k: int) -> list[int]:
    """NumAcc2 (k = 1), 3 (1,000,000) and 4 (10,000,000) in tenths; mean k + 0.2, SD 0.1."""
    return [10 * k + 2, *([10 * k + 1, 10 * k + 3] * 500)]


def whole(text: str) -> list[int]:
    """The numbers of a block of text."""
    return [int(word) for word in text.split()]
