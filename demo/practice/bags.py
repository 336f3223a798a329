"""The two bags of the invented practice, in the words of wire/bag.1.json. Cuffs are known by their width in mm and by our own marks.

Of most things it is not known for which species they were validated: that is how bags are. `checked_days_ago` becomes `checked_on_day`.
"""

from __future__ import annotations

from demo.animals import Facts

SHELTER_BAG: Facts = {
    "name": "Shelter bag",
    "cuffs": [{"width_mm": 20}, {"width_mm": 25, "mark": "white thread"}, {"width_mm": 28}, {"width_mm": 30, "mark": "isolation only"},
              {"width_mm": 30}, {"width_mm": 35}, {"width_mm": 40}, {"width_mm": 45}, {"width_mm": 50, "mark": "new hook"},
              {"width_mm": 60}, {"width_mm": 70}, {"width_mm": 80}, {"width_mm": 100}],
    "gauges": [{"name": "black gauge", "type": "aneroid", "checked_days_ago": 40},
               {"name": "spare gauge", "type": "aneroid", "checked_days_ago": 410}],
    "detectors": [{"name": "probe, taped cable", "checked_days_ago": 12}, {"name": "probe, short cable"}],
    "machines": [{"name": "machine, grey case", "validated_in": ["dog"], "validated_by": "said in its booklet; not read by us",
                  "checked_days_ago": 95}],
}

HOME_BAG: Facts = {
    "name": "Home visits",
    "cuffs": [{"width_mm": 20}, {"width_mm": 25}, {"width_mm": 28, "mark": "soft"}, {"width_mm": 30}, {"width_mm": 35},
              {"width_mm": 40}, {"width_mm": 50}],
    "gauges": [{"name": "small gauge", "type": "aneroid", "checked_days_ago": 33}],
    "detectors": [{"name": "probe with headphones", "validated_in": ["cat", "dog"], "validated_by": "asked of the seller; no paper seen"}],
}

BAGS = (SHELTER_BAG, HOME_BAG)
