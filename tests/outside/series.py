"""Plain measurements for outside checks: one set, systolic values in order, all else as quiet as can be."""

from __future__ import annotations

from typing import Any


def call(*systolic_mmhg: int, species: str = "dog", **more: Any) -> dict[str, Any]:
    """The call for one set of these values; the first of them is the one that is not counted.

    Keys of a set (`cuff_above_heart_mm`, …) go into the set, others into the measurement; `step_s` spaces the times.
    """
    step_s = more.pop("step_s", 60)
    readings = [{"id": str(i), "systolic_mmhg": value, "taken_s": i * step_s} for i, value in enumerate(systolic_mmhg)]
    in_set = {key: more.pop(key) for key in list(more) if key in SET_KEYS}
    limb = {"limb_circumference_mm": 130, "cuff_width_mm": 50}
    one_set = {"method": "doppler", **limb, **in_set, "readings": readings}
    return {"do": "assess", "measurement": {"species": species, "rest_s": 900, **more, "sets": [one_set]}}


SET_KEYS = ("method", "gauge", "limb_circumference_mm", "cuff_width_mm", "cuff_above_heart_mm")
