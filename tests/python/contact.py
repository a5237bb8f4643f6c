"""The blow of the closing edge, by SciPy: where the gap is left, by a root finder on the edge's way; how fast the leaf then is, by its own runs;
and the force, by leaf and rotor run into a spring as one body whose kinetic energy is differentiated.
"""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from motion import Command, Drive, Path, moving_jobs, run

# As for the motor's runs: what an interpolant of the arm carries.
TOLERANCE = 1e-4


def edge_gap(theta, length):
    """From the latch edge to where it is closed: what a gate that closes flush closes on."""
    return np.hypot(length * np.cos(theta) - length, length * np.sin(theta))


def struck(path, inertia, drive, stiffness, length, place, speed):
    """Most force at the edge, from a closing shaft at a place: ½(J + I θ'²) q'² and ½ k (L Δθ)²."""
    start = float(path.leaf(place))

    def rates(_, state):
        q, w = state
        gain, rate = float(path.gain(q)), float(path.rate(q))
        force = stiffness * length * (start - float(path.leaf(q)))
        return [w, (force * length * gain - inertia * gain * rate * w * w) / (drive + inertia * gain * gain)]

    def turns(t, state):
        return -1 if t < 1e-9 else state[1]

    turns.terminal, turns.direction = True, 1
    done = solve_ivp(rates, (0, 10), [place, -speed], method="DOP853", rtol=1e-11, atol=1e-13, events=[turns])
    return stiffness * length * (start - float(path.leaf(done.y[0, -1])))


def checks(example):
    for number, job, plan in moving_jobs(example):
        path, drive, length = Path(job), Drive(job["motion"]["motor"]), job["leaf"]["length_m"]
        inertia = job["leaf"]["mass_kg"] * length**2 / 3
        person, opening = plan["person"], path.opening
        rows = [row for row in person["blows"] if row["gap_m"] is not None]
        gaps = [gap for gap in (0.05, 0.3, 0.5) if edge_gap(opening, length) >= gap]
        yield None if [row["gap_m"] for row in rows] == gaps else f"moving job {number}: gaps {rows}"
        angles = [brentq(lambda theta, gap=gap: edge_gap(theta, length) - gap, 0, opening, xtol=1e-14) for gap in gaps]
        places = [brentq(lambda q, angle=angle: float(path.leaf(q)) - angle, 0, path.travel, xtol=1e-14) for angle in angles]
        asked = [Command(job, path.travel, -1, drive.free).wanted(path.travel - place)[0] for place in places]
        runs = [run(job, -1, against, places)[3] or [None] * len(places) for against in (True, False)]
        for row, angle, place, *speeds in zip(rows, angles, places, asked, *runs, strict=True):
            speed = max(speed for speed in speeds if speed is not None)
            force = struck(path, inertia, drive.inertia, 5e5, length, place, speed)
            for name, ours, theirs in (("angle", row["leaf_deg"], np.degrees(angle)),
                                       ("edge speed", row["edge_speed_m_s"], float(path.gain(place)) * speed * length),
                                       ("blow", row["impact_n"], force)):
                yield None if abs(ours / theirs - 1) <= TOLERANCE else (
                    f"moving job {number}: {name} at {row['gap_m']} m {ours} here, {theirs} by SciPy")
