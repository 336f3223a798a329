"""Mean, SD, interval and t against certified and published figures.

Sources: NIST StRD univariate sets (certified values); Student, Biometrika 1908;6:1-25, the sleep data, with the
interval that the R documentation prints for them; scipy.stats for t.
"""

from __future__ import annotations

from decimal import Decimal

import pytest
from scipy import stats

from quietcuff.contract.rule_documents import rule_set
from quietcuff.rules.averaging import average_mmhg
from tests.outside import nist
from tests.outside.conftest import Ask
from tests.outside.series import call

AVERAGING = rule_set()["documents"]["averaging"]
# A set times this is still whole, and its SD in tenths then has twelve digits to compare.
DIGITS = 10**10

CERTIFIED = {
    "Mavro": ([20_000 + x for x in nist.whole(nist.MAVRO)], 10_000, nist.MAVRO_MEAN, nist.MAVRO_SD),
    "Michelso": ([299_000 + x for x in nist.whole(nist.MICHELSO)], 1000, nist.MICHELSO_MEAN, nist.MICHELSO_SD),
    "NumAcc1": ([*nist.NUM_ACC_1], 1, "10000002", "1"),
    "NumAcc2": (nist.num_acc(1), 10, "1.2", "0.1"),
    "NumAcc3": (nist.num_acc(1_000_000), 10, "1000000.2", "0.1"),
    "NumAcc4": (nist.num_acc(10_000_000), 10, "10000000.2", "0.1"),
}


@pytest.mark.parametrize("name", CERTIFIED)
def test_nist_certified_values(name: str) -> None:
    """NIST StRD: mean and SD to every certified digit that whole tenths of the scaled set can show (twelve)."""
    values, scale, mean, sd = CERTIFIED[name]
    found = average_mmhg([value * DIGITS for value in values], False, AVERAGING)
    tenths = Decimal(10 * scale * DIGITS)
    assert abs(Decimal(found["mean_tenths_mmhg"]) - Decimal(mean) * tenths) <= Decimal("0.5")
    # the certified SD itself is printed to 15 digits: half a unit of its last one is allowed as well
    last_digit = Decimal(10) ** Decimal(sd).as_tuple().exponent * tenths / 2
    assert abs(Decimal(found["sd_tenths_mmhg"]) - Decimal(sd) * tenths) <= Decimal("0.5") + last_digit


def test_nist_sets_are_whole() -> None:
    """As many values as NIST says: a digit lost in copying would show here or in the mean."""
    sizes = {name: len(values) for name, (values, *_) in CERTIFIED.items()}
    num_acc = {"NumAcc1": 3, "NumAcc2": 1001, "NumAcc3": 1001, "NumAcc4": 1001}
    assert sizes == {"Mavro": 50, "Michelso": 100, **num_acc}


def test_num_acc_1_in_both_engines(ask: Ask) -> None:
    """NumAcc1 less 9,999,900, as pressures: 101, 103, 102 have mean 102 and SD exactly 1."""
    (found,) = ask([call(170, 101, 103, 102)])
    shown = found["sets"][0]["systolic"]
    assert shown == {"n": 3, "mean_tenths_mmhg": 1020, "sd_tenths_mmhg": 10, "spread_permille": 20}


def test_student_sleep_data(ask: Ask) -> None:
    """Student 1908: ten differences, mean 1.58, SD 1.229995, 95 % interval 0.7001142 to 2.4598858 (R's t.test page).

    Taken as 100 + ten times the hours, in an irregular rhythm, where ten readings are all averaged.
    """
    hours = (1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4)
    (found,) = ask([call(170, *(100 + round(10 * x) for x in hours), rhythm="irregular")])
    shown = found["sets"][0]["systolic"]
    assert (shown["n"], shown["mean_tenths_mmhg"]) == (10, 1000 + 158)
    assert abs(shown["sd_tenths_mmhg"] - 100 * 1.229995) <= 0.5
    assert abs(shown["ci95_half_width_tenths_mmhg"] - 100 * (2.4598858 - 0.7001142) / 2) <= 0.5


def test_michelson_first_experiment(ask: Ask) -> None:
    """Michelson's first twenty (R's `morley`, experiment 1): mean 909, SD 104.92604.

    Taken as 50 + (x - 650) / 2, whole and within a gauge: SD is unmoved by a shift and halves with the values.
    """
    first = nist.whole(nist.MICHELSO)[:20]
    (found,) = ask([call(170, *((x - 650) // 2 + 50 for x in first))])
    shown = found["sets"][0]["systolic"]
    assert (shown["n"], shown["mean_tenths_mmhg"]) == (20, 10 * (909 - 650) // 2 + 500)
    assert abs(shown["sd_tenths_mmhg"] - 10 * 104.92604 / 2) <= 0.5


def test_t_to_the_thousandth() -> None:
    """Student's t, two-sided 95 %, from scipy: the document's thousandths, one for each n from `from_n`."""
    interval = AVERAGING["numbers"]["interval"]
    for place, t in enumerate(interval["t_thousandths"]):
        exact = stats.t.ppf(0.975, interval["from_n"] + place - 1)
        assert t == round(1000 * exact), (place, exact)


def test_interval_of_five_from_scipy(ask: Ask) -> None:
    """142, 138, 140, 136, 144: scipy's own interval of a mean, 136.07 to 143.93."""
    values = [142, 138, 140, 136, 144]
    low, high = stats.t.interval(0.95, 4, loc=140, scale=stats.sem(values))
    (found,) = ask([call(168, *values)])
    shown = found["sets"][0]["systolic"]
    assert abs(shown["ci95_half_width_tenths_mmhg"] - 10 * (high - low) / 2) <= 0.5 + 0.01
