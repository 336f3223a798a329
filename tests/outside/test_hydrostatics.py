"""The height correction against physics: a column of blood weighs rho x g x h.

Sources: density of whole blood 1050 to 1060 kg/m3 (physiology handbooks, from memory); standard gravity 9.80665 m/s2
(CGPM 1901); 1 mmHg = 133.322387 Pa (NIST SP 811). The published rounding is 0.8 mmHg per cm, beyond 10 cm.
"""

from __future__ import annotations

import pytest

from quietcuff.contract.rule_documents import rule_set
from tests.outside.conftest import Ask
from tests.outside.series import call

GRAVITY_M_S2 = 9.80665
PA_PER_MMHG = 133.322387
DENSITIES_KG_M3 = (1050, 1055, 1060)


def mmhg_per_cm(density_kg_m3: float) -> float:
    """Pressure of a column of 1 cm."""
    return density_kg_m3 * GRAVITY_M_S2 * 0.01 / PA_PER_MMHG


def test_a_column_of_blood() -> None:
    """0.772 to 0.780 mmHg per cm."""
    assert [round(mmhg_per_cm(density), 3) for density in DENSITIES_KG_M3] == [0.772, 0.776, 0.780]


@pytest.mark.parametrize("density_kg_m3", DENSITIES_KG_M3)
def test_the_document_is_physics_rounded_to_a_tenth(density_kg_m3: float) -> None:
    """0.8 mmHg per cm is each of these to one decimal."""
    per_mm = rule_set()["documents"]["height"]["numbers"]["hundredths_mmhg_per_mm"]["dog"]
    assert 10 * per_mm / 100 == round(mmhg_per_cm(density_kg_m3), 1)


@pytest.mark.parametrize("above_heart_mm", [-400, -250, -101, 101, 250, 400])
def test_correction_acts_as_gravity_does(ask: Ask, above_heart_mm: int) -> None:
    """Above the heart blood must climb: the cuff reads too low, so something is added; over the whole distance."""
    (found,) = ask([call(170, 150, 150, 150, 150, 150, cuff_above_heart_mm=above_heart_mm)])
    height = found["sets"][0]["height"]
    physics = mmhg_per_cm(1055) * above_heart_mm / 10
    assert abs(height["correction_hundredths_mmhg"] / 100 - physics) <= 0.04 * abs(physics)
    assert abs(height["corrected_mean_tenths_mmhg"] / 10 - (150 + physics)) <= 0.04 * abs(physics) + 0.05


def test_within_ten_cm_nothing_is_corrected(ask: Ask) -> None:
    """Published: only beyond 10 cm (Acierno et al. 2018, from memory). Cats are never corrected (our own rule)."""
    near = ask([call(170, 150, 150, cuff_above_heart_mm=mm) for mm in (-100, 0, 100)])
    cats = ask([call(170, 150, 150, species="cat", cuff_above_heart_mm=mm) for mm in (-400, 400)])
    assert ["height" in found["sets"][0] for found in (*near, *cats)] == [False] * 5
