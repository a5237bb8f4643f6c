"""The leaf in the storm, half open, open and where the shaft has most to hold, from the same free bodies as the curve.

The storm pushes square to the leaf with its force spread over the length; a lean may add to it from either side. The arm's losses help to
hold, as the leaf drives the shaft.
"""

import numpy as np
from scipy.optimize import minimize_scalar

from jobs import back, random_jobs
from statics import Arm, Leaf, cross

JOBS = 24
TOLERANCE = 1e-8
# The product looks at 257 angles for the worst; between two of them the torque is flat there.
WORST = 2e-4


def held(job, theta):
    """What the arm, the hinges or a bolt hold with the leaf at an angle, by the names of the plan."""
    leaf, arm, storm = Leaf({**job, "wind": job["storm"]}), Arm(job["arm"]), job["storm"]
    force = 0.5 * storm["air_density_kg_m3"] * storm["speed_m_s"] ** 2 * storm["force_coefficient"] * job["leaf"]["wind_area_m2"]
    outside = leaf.wind + abs(leaf.gravity(theta))
    torque, link, _, bend = arm.statics(theta, outside)
    bracket, elbow = arm.pins(theta)
    along = np.array([np.cos(theta), np.sin(theta)])
    square = np.array([-along[1], along[0]])
    on_leaf = link * (bracket - elbow) / arm.link
    assert abs(cross(bracket, on_leaf) + outside) < 1e-6 * max(outside, 1), "the leaf is not at rest"
    return bend, {
        "moment_n_m": outside,
        "shaft_torque_n_m": abs(torque) * back(job),
        "link_force_n": abs(link),
        "bracket_along_n": abs(on_leaf @ along),
        "bracket_across_n": abs(on_leaf @ square),
        "hinge_n": np.hypot(*(on_leaf + force * square)),
        "bolt_n": outside / job["leaf"]["length_m"],
    }


def checks(example):
    solved = 0
    for number, job in enumerate(random_jobs(seed=20261130)):
        if solved == JOBS:
            return
        job["storm"] = {"speed_m_s": 20 + number % 15, "force_coefficient": 1.3, "air_density_kg_m3": 1.25}
        if job["hinges"]["kind"] == "rising" or (plan := example.plan(job)) is None:
            continue
        solved += 1
        stranded, opening = plan["storm"]["stranded"], job["swing"]["open_deg"]
        for name, angle in (("half_open", opening / 2), ("open", opening), ("worst", stranded["worst"]["leaf_deg"])):
            bend, wanted = held(job, np.radians(angle))
            if abs(bend) < 0.02:
                continue
            for key, value in wanted.items():
                off = abs(stranded[name][key] - value) / max(value, 1)
                yield None if off <= TOLERANCE else f"storm on random job {number}: {name} {key} deviates by {off:.2e}"
        torque = lambda degrees: -held(job, np.radians(degrees))[1]["shaft_torque_n_m"]
        angles = np.linspace(0, opening, 61)
        rows = [torque(angle) for angle in angles]
        top = int(np.argmin(rows))
        low, high = angles[max(top - 1, 0)], angles[min(top + 1, 60)]
        most = max(-rows[top], -minimize_scalar(torque, bounds=(low, high), method="bounded").fun)
        off = abs(stranded["worst"]["shaft_torque_n_m"] / most - 1)
        yield None if off <= WORST else f"storm on random job {number}: the worst deviates by {off:.2e}"
