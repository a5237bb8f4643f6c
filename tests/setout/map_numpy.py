"""The pad map by NumPy: for every place of a grid the least peak torque over a grid of brackets, lengths and sides, all places and arms at once.

The plain way to make such a map, written apart from the core on top of oracle.py's evaluation; it stands beside the core's map so that
their speeds can be compared on one machine.

    python map_numpy.py MAP-EXAMPLE site.json [COLUMNS ROWS]     prints both times, their ratio per place, and how far the maps differ

The core searches brackets and lengths without steps; here they are tried in STEPS steps, so this map's torques lie above the core's.
"""
import json
import subprocess
import sys
import time

import numpy as np

from oracle import Site

STEPS = 12
ANGLES = 41


def torques(job, columns, rows):
    """Least torque of every place, row by row; NaN where no tried arm keeps the limits."""
    site, setout = Site(job, ANGLES), job["setout"]
    spread = lambda key, count: np.linspace(*setout[key], count)
    off = np.linspace(-1, 1, STEPS) * site.square
    u, straightness, off, towards = (part.ravel() for part in np.meshgrid(
        spread("bracket_u_m", STEPS), np.linspace(max(site.straightness[0], 0.02), site.straightness[1], STEPS), off, [1.0, -1.0]))
    v, turn = setout["bracket_v_m"], np.exp(1j * site.swing)
    allowed = {"left": [1.0], "right": [-1.0]}.get(setout.get("elbow"), [1.0, -1.0])
    least = np.full((rows, columns), np.nan)
    for row, y in enumerate(spread("shaft_y_m", rows)):
        for column, x in enumerate(spread("shaft_x_m", columns)):
            # Lengths that leave the link at the angle `off` from square on the open leaf: |D - b*w| = L - b.
            both = np.hypot(u - x, v - y) / straightness
            reach = (u + 1j * v) * turn - (x + 1j * y)
            unit = (np.sin(off) + 1j * towards * np.cos(off)) * turn
            link = (both**2 - np.abs(reach) ** 2) / (2 * (both - (np.conj(unit) * reach).real))
            side = np.where((np.conj(reach) * (reach - link * unit)).imag > 0, 1.0, -1.0)
            fits = (link > 1e-3) & (both - link > 1e-3) & np.isin(side, allowed)
            if not fits.any():
                continue
            arms = np.array([np.full(u.shape, x), np.full(u.shape, y), u, both - link, link, side])[:, fits]
            torque, excess = site.evaluate(arms)
            kept = excess <= 1e-6
            if kept.any():
                least[row, column] = torque[kept].min()
    return least


def compare(example, path, columns, rows):
    """Runs both on one site: seconds of each, their ratio, how many places both have, and the middle of torque over torque."""
    with open(path, encoding="utf-8") as file:
        job = json.load(file)
    done = subprocess.run([example, path, str(columns), str(rows)], capture_output=True, text=True, check=True)
    core = json.loads(done.stdout)
    began = time.perf_counter()
    plain = torques(job, columns, rows)
    seconds = time.perf_counter() - began
    own = np.array([np.nan if value is None else value for value in core["torques_n_m"]]).reshape(rows, columns)
    both = ~np.isnan(own) & ~np.isnan(plain)
    return {"places": columns * rows, "numpy_seconds": seconds, "core_seconds": core["seconds"], "ratio": seconds / core["seconds"],
            "both": int(both.sum()), "numpy_alone": int((~np.isnan(plain) & np.isnan(own)).sum()),
            "numpy_over_core": float(np.median(plain[both] / own[both])) if both.any() else None,
            "least_numpy_over_core": float((plain[both] / own[both]).min()) if both.any() else None}


if __name__ == "__main__":
    if len(sys.argv) not in (3, 5):
        sys.exit(__doc__)
    grid = (int(sys.argv[3]), int(sys.argv[4])) if len(sys.argv) == 5 else (20, 20)
    print(json.dumps(compare(sys.argv[1], sys.argv[2], *grid)))
