"""Random jobs, the same at every run."""

import math
import random


def random_jobs(seed=20240229):
    """Endless; not all of them are valid."""
    draw = random.Random(seed).uniform
    choose = random.Random(seed + 1)
    # A draw of its own, so that the other jobs stay what they are.
    ramp = random.Random(seed + 2)
    while True:
        x, y, u, v = draw(-0.8, 0.3), draw(-0.6, 0.9), draw(0.4, 2), draw(-0.2, 0.3)
        length = math.hypot(u - x, v - y) / draw(0.85, 0.999)
        crank = draw(0.35, 0.7)
        inner = draw(0.006, 0.02)
        plain = {"kind": "plain", "spacing_m": draw(0.4, 2), "pin_radius_m": inner, "thrust_inner_radius_m": inner,
                 "thrust_outer_radius_m": inner * draw(1.1, 2.5), "friction_coefficient": draw(0.02, 0.5)}
        measured = {"kind": "measured", "pull_open_n": draw(5, 150), "pull_close_n": draw(5, 150),
                    "pull_radius_m": draw(0.5, 4), "pull_leaf_deg": draw(0, 90)}
        rising = {**plain, "kind": "rising", "collar": ramp.choice(["uniform_pressure", "uniform_wear"]),
                  "rise_m": ramp.uniform(-0.06, 0.06)}
        job = {
            "schema": 1,
            "hand": choose.choice(["left", "right"]),
            "leaf": {"mass_kg": draw(30, 600), "length_m": draw(1.5, 6), "wind_area_m2": draw(0, 6)},
            "hinges": choose.choice([plain, measured]),
            "lean": {"angle_deg": draw(0, 4), "downhill_deg": draw(-180, 180)},
            "wind": {"speed_m_s": draw(0, 30), "force_coefficient": draw(0.8, 2), "air_density_kg_m3": draw(1, 1.3)},
            "swing": {"open_deg": draw(40, 120)},
            "arm": {"shaft_x_m": x, "shaft_y_m": y, "bracket_u_m": u, "bracket_v_m": v, "crank_m": crank * length,
                    "link_m": (1 - crank) * length, "elbow": choose.choice(["left", "right"])},
            "operator": {"rated_torque_n_m": draw(100, 2000), "arm_efficiency": draw(0.6, 1)},
            "samples": 181,
        }
        # Every third job says how much of the leaf's work reaches the shaft; the others leave it at the arm's efficiency.
        if round(1e6 * job["operator"]["arm_efficiency"]) % 3 == 0:
            job["operator"]["back_efficiency"] = 0.3 + 0.6 * abs(job["operator"]["arm_efficiency"] - 0.6) / 0.4
        if job["hinges"] is plain and ramp.random() < 0.6:
            job["hinges"] = rising
        yield job


def back(job):
    """Part of the leaf's work that reaches the shaft."""
    return job["operator"].get("back_efficiency", job["operator"]["arm_efficiency"])
