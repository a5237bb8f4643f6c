"""Random sites, hard ones among them, set out by the example and by SciPy's differential evolution. By hand: some ten seconds a site.

    python setout_stress.py PATH-OF-THE-SETOUT-EXAMPLE [COUNT [SEED [AIM]]]

Every site is built around an arm that keeps its limits, so there is always a set-out to find: an answer of none is a miss. Its limits lie close
to that arm or far from it: thin ranges, fixed values, rectangles that touch the arm's sweep, arms with a width, lattices, leaning hinges,
measured pulls, a wind with a bearing (which changes nothing: the wind that decides is against). An answer is a miss too if an
independent dense sampling finds a limit exceeded or another torque, or if it is more than a thousandth above the better of the planted arm
and differential evolution's. Prints a line of JSON for each miss with the site's number, and a summary; ends with 1 on a miss.
"""

import json
import pathlib
import subprocess
import sys
import time

FOLDER = pathlib.Path(__file__).resolve().parent.parent / "setout"
sys.path.insert(0, str(FOLDER))

import numpy as np  # noqa: E402
import oracle  # noqa: E402  (found through the folder above)

KEYS = ("shaft_x_m", "shaft_y_m", "bracket_u_m", "crank_m", "link_m")
AIMS = {"least_shaft_torque": "shaft_torque_n_m", "least_link_force": "link_force_n", "least_shaft_travel": "shaft_travel_deg"}
WIDE = {"shaft_x_m": (-0.9, 0.3), "shaft_y_m": (0.1, 1.0), "bracket_u_m": (0.4, 2.0), "crank_m": (0.2, 1.4), "link_m": (0.2, 1.4)}


def leaf(rng):
    """A job without a set-out block."""
    length = rng.uniform(2, 5)
    plain = {"kind": "plain", "spacing_m": rng.uniform(0.8, 1.6), "pin_radius_m": 0.012, "thrust_outer_radius_m": 0.02,
             "thrust_inner_radius_m": 0.012, "friction_coefficient": rng.uniform(0.05, 0.4)}
    pulls = {"kind": "measured", "pull_open_n": rng.uniform(20, 80), "pull_close_n": rng.uniform(20, 80), "pull_radius_m": 1.8, "pull_leaf_deg": 30}
    job = {"schema": 1, "leaf": {"mass_kg": rng.uniform(40, 400), "length_m": length, "wind_area_m2": rng.uniform(0.5, 5)},
           "hinges": plain if rng.random() < 0.7 else pulls,
           "wind": {"speed_m_s": float(rng.choice([0.5, 8, 12, 20])), "force_coefficient": 1.4},
           "swing": {"open_deg": float(rng.choice([90, rng.uniform(60, 120)]))},
           "operator": {"rated_torque_n_m": 400, "arm_efficiency": float(rng.choice([1, 0.95, 0.8]))}}
    if rng.random() < 0.4:
        job["lean"] = {"angle_deg": rng.uniform(0, 5), "downhill_deg": rng.uniform(-180, 180)}
    if rng.random() < 0.2:
        job["wind"]["bearing_deg"] = rng.uniform(0, 360)
    return job


def planted(rng, job, step):
    """An arm that works: shaft, bracket and straightness drawn, the link near square to the open leaf; None where the draw has none."""
    draw = {key: rng.uniform(*WIDE[key]) for key in KEYS[:3]}
    v = float(rng.choice([0, 0.03, 0.06, 0.1]))
    straightness = float(rng.choice([1, rng.uniform(0.95, 1), rng.uniform(0.8, 1)]))
    off = np.radians(rng.choice([0, rng.uniform(-20, 20)]))
    if step:
        draw = {key: round(value / step) * step for key, value in draw.items()}
    x, y, u = draw.values()
    turn = np.exp(1j * np.radians(job["swing"]["open_deg"]))
    both, reach = np.hypot(u - x, v - y) / straightness, (u + 1j * v) * turn - (x + 1j * y)
    unit = (np.sin(off) + 1j * rng.choice([1, -1]) * np.cos(off)) * turn
    link = (both**2 - abs(reach) ** 2) / (2 * (both - (np.conj(unit) * reach).real))
    crank = both - link
    if step:
        crank, link = round(crank / step) * step, round(link / step) * step
    side = 1.0 if (np.conj(reach) * (reach - link * unit)).imag > 0 else -1.0
    if not (0.1 < crank < 2 and 0.1 < link < 2):
        return None
    return np.array([x, y, u, crank, link, side]), v


def site(rng):
    """A job with a set-out block that an arm is known to keep, and that arm."""
    while True:
        job, step = leaf(rng), float(rng.choice([0, 0, 0, 0.005, 0.01, 0.025]))
        draw = planted(rng, job, step)
        if draw is None:
            continue
        arm, v = draw
        closeness = rng.random()
        block = {"bracket_v_m": v, "step_m": step or None}
        for key, value in zip(KEYS, arm):
            low, high = WIDE[key]
            wide = rng.random()
            if wide < 0.12:
                block[key] = [value, value]
            elif wide < 0.4:
                block[key] = [min(low, value), max(high, value)]
            else:
                below, above = rng.uniform(0, 0.4 * closeness, 2)
                block[key] = [value - below, value + above]
            if key in ("crank_m", "link_m"):
                block[key][0] = max(block[key][0], 0.05)
        straightness = np.hypot(arm[2] - arm[0], v - arm[1]) / (arm[3] + arm[4])
        if straightness > 1 + 1e-12:
            continue
        thin = float(rng.choice([0.0005, 0.005, 0.03, 0.2]))
        block["straightness"] = [max(0, straightness - thin * rng.random()), min(1, straightness + thin * rng.random())]
        if rng.random() < 0.3:
            block["straightness"][1] = 1.0
        block["elbow"] = str(rng.choice(["either", "either", "left" if arm[5] > 0 else "right"]))
        block["arm_half_width_m"] = float(rng.choice([0, 0.02, 0.03]))
        block.update(square_deg=90, least_lever_m=0, shaft_travel_deg=360, keep_out=[])
        job["setout"] = block
        # How the arm uses what is limited, from the sampling itself; then limits around that.
        use = figures(job, arm)
        if use is None:
            continue
        off, lever, travel = use
        slack = float(rng.choice([0.02, 0.2, 1]))
        block["square_deg"] = min(90, off + 0.01 + 15 * slack * rng.random())
        block["least_lever_m"] = max(0, lever * (1 - slack * rng.random()))
        block["shaft_travel_deg"] = min(360, travel + 0.01 + 90 * slack * rng.random())
        for _ in range(int(rng.choice([0, 0, 1, 2, 4]))):
            cx, cy, wx, wy = rng.uniform(-0.9, 1.6), rng.uniform(-0.3, 1.2), rng.uniform(0.02, 0.4), rng.uniform(0.02, 0.3)
            block["keep_out"].append({"x_m": [cx, cx + wx], "y_m": [cy, cy + wy]})
            if oracle.Site(job, 721).evaluate(arm[:, None])[1][0] > 0:
                # Halve it towards a corner until the arm passes it; a touch is likelier so than by drawing anew.
                for _ in range(3):
                    wx, wy = wx / 2, wy / 2
                    block["keep_out"][-1] = {"x_m": [cx, cx + wx], "y_m": [cy, cy + wy]}
                    if oracle.Site(job, 721).evaluate(arm[:, None])[1][0] <= 0:
                        break
                else:
                    block["keep_out"].pop()
        if oracle.Site(job, 3601).evaluate(arm[:, None])[1][0] <= 1e-12:
            return job, arm


def figures(job, arm):
    """Degrees off square, least lever and shaft travel of an arm that works, or None."""
    sampled = oracle.Site(job, 721)
    if sampled.evaluate(arm[:, None])[1][0] > 1e-12:
        return None
    least = lambda key, low, high: bisect(lambda value: oracle.Site({**job, "setout": {**job["setout"], key: value}}, 721).evaluate(arm[:, None])[1][0] <= 1e-12, low, high)
    return least("square_deg", 90, 0), least("least_lever_m", 0, 3), least("shaft_travel_deg", 360, 1)


def bisect(kept, good, bad):
    """The last value on the way from one that is kept to one that is not."""
    for _ in range(30):
        middle = (good + bad) / 2
        good, bad = (middle, bad) if kept(middle) else (good, middle)
    return good


def judge(example, job, arm):
    """Verdict on one site: what is wrong or None, our value over the best of the others, seconds of both."""
    began = time.perf_counter()
    done = subprocess.run([example, "-"], input=json.dumps(job), capture_output=True, text=True, check=False)
    ours_s = time.perf_counter() - began
    if done.returncode not in (0, 3):
        return f"code {done.returncode}: {done.stderr[:200]}", None, (ours_s, 0)
    best = json.loads(done.stdout)["best"]
    if best is None:
        return "none found, one exists", None, (ours_s, 0)
    own = np.array([best[key] for key in KEYS] + [1.0 if best["elbow"] == "left" else -1.0])
    dense = oracle.Site(job, 3601)
    value, excess = dense.evaluate(own[:, None])
    wrong = None
    if excess[0] > 1e-8:
        wrong = f"a limit exceeded by {excess[0]}"
    step = job["setout"].get("step_m")
    if step and np.abs(own[:5] / step - np.round(own[:5] / step)).max() * step > 1e-9:
        wrong = "off the lattice"
    said = best[AIMS[job["setout"].get("aim") or "least_shaft_torque"]]
    if abs(value[0] / said - 1) > 1e-5:
        wrong = f"{said} said, {value[0]} by dense sampling"
    began = time.perf_counter()
    other = oracle.set_out(job, generations=400, population=20)
    other_s = time.perf_counter() - began
    rivals = [dense.evaluate(arm[:, None])[0][0]]
    if other is not None:
        torque, slip = dense.evaluate(np.array(other[1])[:, None])
        # A sampled swing lets corners through; those are no rivals.
        if slip[0] <= 1e-6:
            rivals.append(torque[0])
    ratio = float(value[0] / min(rivals))
    if wrong is None and ratio > 1.001:
        wrong = f"{100 * (ratio - 1):.3f} % above {'the planted arm' if min(rivals) == rivals[0] else 'differential evolution'}"
    return wrong, ratio, (ours_s, other_s)


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    count, seed = (int(sys.argv[i]) if len(sys.argv) > i else default for i, default in ((2, 100), (3, 1)))
    aim = sys.argv[4] if len(sys.argv) > 4 else None
    misses, ratios, seconds = 0, [], np.zeros(2)
    for number in range(count):
        job, arm = site(np.random.default_rng([seed, number]))
        if aim:
            job["setout"]["aim"] = aim
        wrong, ratio, took = judge(sys.argv[1], job, arm)
        seconds += took
        if ratio is not None:
            ratios.append(ratio)
        if wrong:
            misses += 1
            print(json.dumps({"seed": seed, "number": number, "wrong": wrong, "took": took, "job": job, "planted": list(arm)}), flush=True)
        if number % 10 == 9:
            print(f"{number + 1} sites, {misses} missed", file=sys.stderr, flush=True)
    ratios.sort()
    print(json.dumps({"sites": count, "misses": misses, "least_ratio": ratios[0], "median_ratio": ratios[len(ratios) // 2], "greatest_ratio": ratios[-1],
                      "seconds_of_the_example": seconds[0], "seconds_of_differential_evolution": seconds[1]}))
    sys.exit(1 if misses else 0)


if __name__ == "__main__":
    main()
