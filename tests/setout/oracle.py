"""Sets out operators by SciPy's differential evolution: the outside opinion that the search in the core is held to.

Written apart from the core: complex numbers for the geometry, a dense grid for the continuous swing, a penalty for the limits.
Loads and arm follow the definitions that the tests' README names (statics and virtual work). A whole population is evaluated at once.

    python oracle.py site.json ...        one line of JSON per site: {"site", "torque_n_m", "arm", "excess", "seconds"}
    python oracle.py --fixture out.json site.json ...   all of them in one file, with the versions used
    python oracle.py --proof out.json jobs.json [NAME ...]   the same for sites that every tape error has to leave working
    python oracle.py --aims out.json site.json ...      the same for every aim but the torque

Needs: pip install "scipy>=1.11" "numpy>=1.26". Random numbers are seeded, so a run repeats itself on the same versions.
"""
import json
import math
import pathlib
import sys
import time

import numpy as np
import scipy
from scipy.optimize import differential_evolution

GRAVITY = 9.80665


def or_default(value, default):
    return default if value is None else value


class Site:
    """The loads and limits of one job, evaluated for many arms at once."""

    def __init__(self, job, angles):
        self.setout = job["setout"]
        leaf, hinges, wind = job["leaf"], job["hinges"], job["wind"]
        weight = leaf["mass_kg"] * GRAVITY
        mass_centre = or_default(leaf.get("mass_centroid_m"), leaf["length_m"] / 2)
        wind_centre = or_default(leaf.get("wind_centroid_m"), leaf["length_m"] / 2)
        if hinges["kind"] == "plain":
            couple = weight * abs(mass_centre) / hinges["spacing_m"]
            outer, inner = hinges["thrust_outer_radius_m"], hinges["thrust_inner_radius_m"]
            collar = 2 / 3 * weight * (outer**2 + outer * inner + inner**2) / (outer + inner)
            friction = hinges["friction_coefficient"] * (2 * hinges["pin_radius_m"] * couple + collar)
        else:
            friction = hinges["pull_radius_m"] * (hinges["pull_open_n"] + hinges["pull_close_n"]) / 2
        density = or_default(wind.get("air_density_kg_m3"), 1.225)
        gust = 0.5 * density * wind["speed_m_s"] ** 2 * wind["force_coefficient"] * leaf["wind_area_m2"] * abs(wind_centre)
        lean = job.get("lean") or {}
        slope = math.radians(or_default(lean.get("angle_deg"), 0))
        downhill = math.radians(or_default(lean.get("downhill_deg"), 0))
        efficiency = or_default(job["operator"].get("arm_efficiency"), 1)
        self.swing = math.radians(job["swing"]["open_deg"])
        leaf_angle = np.linspace(0, self.swing, angles)
        gravity = -weight * mass_centre * math.sin(slope) * np.sin(leaf_angle - downhill)
        opening, closing = friction + gust - gravity, -(friction + gust) - gravity
        at_shaft = lambda torque, sign: np.abs(np.where(torque * sign > 0, torque / efficiency, torque * efficiency))
        self.effort = np.maximum(at_shaft(opening, 1), at_shaft(closing, -1))
        storm = gust * (or_default(self.setout.get("storm_speed_m_s"), wind["speed_m_s"]) / max(wind["speed_m_s"], 1e-9)) ** 2
        self.storm = np.maximum(np.abs(friction + storm - gravity), np.abs(-(friction + storm) - gravity))
        self.turned = np.exp(1j * leaf_angle)
        self.past_tenth = leaf_angle >= 0.1 * self.swing - 1e-12
        setout = self.setout
        self.straightness = setout.get("straightness") or [0.0, 1.0]
        self.square = math.radians(or_default(setout.get("square_deg"), 90))
        self.lever = or_default(setout.get("least_lever_m"), 0)
        self.travel = math.radians(or_default(setout.get("shaft_travel_deg"), 360))
        self.half_width = or_default(job.get("arm_half_width_m"), 0)
        self.tape, self.broken = None, [0] * 64
        if setout.get("tape_proof"):
            tape = job.get("tape") or {}
            error = or_default(tape.get("error_m"), 0.005)
            self.tape = [error] * 5 + [tape["link_error_m"] if tape.get("link") == "set_last" else error]
        self.keep_out = [one for one in job.get("obstacles") or [] if "arm" in one.get("stops", ["arm"])]

    def proven(self, arms):
        """The same as `evaluate` where every corner of the tape's errors counts: arms that keep the limits as planned are set as wrongly as the tape may.

        The corners that broke most arms so far are asked first, and an arm that breaks one of them is not asked about the rest.
        """
        least, excess = self.evaluate(arms)
        if self.tape is None:
            return least, excess
        left = np.flatnonzero(excess <= 1e-9)
        for corner in sorted(range(64), key=lambda corner: -self.broken[corner]):
            if left.size == 0:
                break
            _, here = self.evaluate(self.moved(arms[:, left], corner), planned=False)
            excess[left] = np.maximum(excess[left], here)
            self.broken[corner] += np.count_nonzero(here > 1e-9)
            left = left[here <= 1e-9]
        return least, excess

    def moved(self, arms, corner):
        """Arms whose dimensions are long (a bit set) or short by the tape's error: shaft x and y, bracket u and v, crank, link; row 6 is the bracket's v."""
        sign = [1 if corner >> bit & 1 else -1 for bit in range(6)]
        x, y, u, crank, link, side = arms[:6]
        e = self.tape
        v = self.setout["bracket_v_m"] + sign[3] * e[3] + 0 * x
        return np.array([x + sign[0] * e[0], y + sign[1] * e[1], u + sign[2] * e[2], crank + sign[4] * e[4], link + sign[5] * e[5], side, v])

    def evaluate(self, arms, planned=True):
        """What the aim makes small and greatest excess over a limit (m, rad or plain; not above 0 where all are kept) of each column.

        Peak torque (N·m), greatest link force in the storm (N), shaft travel (degrees) or distance from the place (m).

        Rows: shaft x, shaft y, bracket u, crank, link, side (+1 elbow left), and bracket v where that is not the block's. Not `planned`: ranges,
        straightness, angle to the open leaf and torque, which bind the planned arm alone, are not looked at.
        """
        rows = [row[:, None] for row in np.asarray(arms, float)]
        x, y, u, crank, link, side = rows[:6]
        v = rows[6] if len(rows) > 6 else self.setout["bracket_v_m"]
        setout = self.setout
        shaft = x + 1j * y
        bracket = self.turned[None, :] * (u + 1j * v)
        reach = bracket - shaft
        distance = np.abs(reach)
        both, differ = crank + link, np.abs(crank - link)
        straightness = distance[:, :1] / both
        # As planned an arm may be straight when the leaf is closed, whatever the last bit says; set wrongly it has to reach there, too.
        excess = [distance[:, 1 if planned else 0 :] - both, differ - distance]
        if planned:
            excess += [self.straightness[0] - straightness, straightness - self.straightness[1]]
        inside = np.clip(distance, differ, both)
        along = (crank**2 - link**2 + inside**2) / (2 * inside)
        across = np.sqrt(np.maximum(crank**2 - along**2, 0))
        across[:, :1][straightness > 1 - 1e-9] = 0
        unit = reach / distance
        elbow = shaft + along * unit + side * across * 1j * unit
        arm_link = (bracket - elbow) / link
        lever = (np.conj(arm_link) * 1j * bracket).real
        below = inside * across
        torque = self.effort * below / np.maximum(link * np.abs(lever), 1e-12)
        sense = np.sign(lever[:, lever.shape[1] // 2])[:, None]
        excess += [1e-6 - sense * lever, self.lever - sense * lever[:, self.past_tenth]]
        cosine = np.abs((arm_link[:, -1:] * np.conj(self.turned[-1])).real)
        if planned:
            excess.append(np.arcsin(np.minimum(cosine, 1)) - self.square)
        shaft_angle = np.unwrap(np.angle(elbow - shaft), axis=1)
        travel = np.abs(shaft_angle[:, -1:] - shaft_angle[:, :1])
        excess.append(travel - self.travel)
        torque = torque.max(axis=1)
        if planned and setout.get("most_shaft_torque_n_m") is not None:
            excess.append((torque[:, None] / setout["most_shaft_torque_n_m"]) - 1)
        for value, key in ((x, "shaft_x_m"), (y, "shaft_y_m"), (u, "bracket_u_m"), (crank, "crank_m"), (link, "link_m")):
            excess += [setout[key][0] - value, value - setout[key][1]] if planned else []
        base = np.broadcast_to(shaft, elbow.shape)
        for rectangle in self.keep_out:
            for one, other in ((base, elbow), (elbow, bracket)):
                excess.append(self.half_width - separation(rectangle, one, other))
        aim = setout.get("aim") or "least_shaft_torque"
        if aim == "least_link_force":
            least = (self.storm / np.maximum(sense * lever, 1e-9)).max(axis=1)
        elif aim == "least_shaft_travel":
            least = np.degrees(travel[:, 0])
        elif aim == "nearest_place":
            least = np.abs(shaft[:, 0] - complex(setout["place"]["x_m"], setout["place"]["y_m"]))
        else:
            least = torque
        return least, np.max([part.max(axis=1) for part in excess], axis=0)


def separation(rectangle, one, other):
    """Distance of segments from a rectangle, negative by the overlap where they cross it."""
    (x0, x1), (y0, y1) = rectangle["x_m"], rectangle["y_m"]
    gap_x = np.maximum(x0 - np.maximum(one.real, other.real), np.minimum(one.real, other.real) - x1)
    gap_y = np.maximum(y0 - np.maximum(one.imag, other.imag), np.minimum(one.imag, other.imag) - y1)
    line = other - one
    length = np.maximum(np.abs(line), 1e-12)
    centre = complex((x0 + x1) / 2, (y0 + y1) / 2) - one
    reach = np.abs(line.imag) * (x1 - x0) / 2 + np.abs(line.real) * (y1 - y0) / 2
    gap = np.maximum(np.maximum(gap_x, gap_y), (np.abs((np.conj(line) * centre).imag) - reach) / length)
    outside = lambda p: np.hypot(np.maximum(np.maximum(x0 - p.real, p.real - x1), 0), np.maximum(np.maximum(y0 - p.imag, p.imag - y1), 0))
    apart = np.minimum(outside(one), outside(other))
    for corner in (complex(x0, y0), complex(x0, y1), complex(x1, y0), complex(x1, y1)):
        share = np.clip((np.conj(line) * (corner - one)).real / length**2, 0, 1)
        apart = np.minimum(apart, np.abs(corner - one - share * line))
    return np.where(gap > 0, apart, gap)


def decoders(site):
    """Ways to write an arm as five numbers in a box, so that thin sets of arms are not missed: each yields (bounds, decode)."""
    setout, v = site.setout, site.setout["bracket_v_m"]
    least, most = max(site.straightness[0], 0.02), site.straightness[1]
    shaft, bracket = [setout["shaft_x_m"], setout["shaft_y_m"]], setout["bracket_u_m"]
    fixed = lambda key: setout[key][1] - setout[key][0] < 1e-9
    turn = np.exp(1j * site.swing)
    sides = {"left": [1.0], "right": [-1.0]}.get(setout.get("elbow"), [1.0, -1.0])
    if not fixed("crank_m") and not fixed("link_m"):
        for towards in (1, -1):
            def by_link_angle(y, towards=towards):
                x, y_, u, straightness, off = y
                both = np.hypot(u - x, v - y_) / straightness
                reach = (u + 1j * v) * turn - (x + 1j * y_)
                unit = (np.sin(off) + 1j * towards * np.cos(off)) * turn
                link = (both**2 - np.abs(reach) ** 2) / (2 * (both - (np.conj(unit) * reach).real))
                side = np.where((np.conj(reach) * (reach - link * unit)).imag > 0, 1.0, -1.0)
                return np.array([x, y_, u, both - link, link, side]), np.isin(side, sides)
            yield [*shaft, bracket, [least, most], [-site.square, site.square]], by_link_angle
    for side in sides:
        def by_crank(y, side=side):
            x, y_, u, straightness, crank = y
            link = np.hypot(u - x, v - y_) / straightness - crank
            return np.array([x, y_, u, crank, link, side + 0 * x]), np.full(x.shape, True)
        def by_link(y, side=side):
            x, y_, u, straightness, link = y
            crank = np.hypot(u - x, v - y_) / straightness - link
            return np.array([x, y_, u, crank, link, side + 0 * x]), np.full(x.shape, True)
        def by_lengths(y, side=side):
            x, y_, straightness, crank, link = y
            square = (straightness * (crank + link)) ** 2 - (v - y_) ** 2
            return np.array([x, y_, x + np.sqrt(np.maximum(square, 0)), crank, link, side + 0 * x]), square >= 0
        if fixed("crank_m") and fixed("link_m"):
            yield [*shaft, [least, most], setout["crank_m"], setout["link_m"]], by_lengths
        elif fixed("link_m"):
            yield [*shaft, bracket, [least, most], setout["link_m"]], by_link
        else:
            yield [*shaft, bracket, [least, most], setout["crank_m"]], by_crank


def on_lattice(site, angles_cost, seed, generations, population):
    """The lattice as whole numbers, one search per side of the elbow."""
    setout, step = site.setout, site.setout["step_m"]
    keys = ("shaft_x_m", "shaft_y_m", "bracket_u_m", "crank_m", "link_m")
    bounds = [(math.ceil(setout[k][0] / step - 1e-9), math.floor(setout[k][1] / step + 1e-9)) for k in keys]
    best = None
    for side in {"left": [1.0], "right": [-1.0]}.get(setout.get("elbow"), [1.0, -1.0]):
        whole = lambda counts: np.vstack([np.round(counts.reshape(5, -1)) * step, np.full((1, counts.size // 5), side)])
        answer = differential_evolution(
            lambda counts: angles_cost(whole(counts)), bounds, integrality=[True] * 5, popsize=population, maxiter=generations, tol=0, atol=0,
            seed=seed, polish=False, init="sobol", mutation=(0.3, 1.0), recombination=0.8, vectorized=True, updating="deferred")
        if answer.fun < 1e6 and (best is None or answer.fun < best[0]):
            best = (float(answer.fun), [float(number) for number in whole(answer.x)[:, 0]])
    return best


def set_out(job, seed=1, generations=500, population=24, angles=91):
    """The least peak torque differential evolution finds, with its arm, or None."""
    site, best = Site(job, angles), None
    if job["setout"].get("step_m"):
        def lattice_cost(arms):
            torque, excess = site.proven(arms)
            return np.where(excess <= 1e-9, torque, 1e6 * (1 + np.minimum(excess, 1e3)))
        return on_lattice(site, lattice_cost, seed, generations, population)
    for bounds, decode in decoders(site):
        bounds = np.array(bounds, float)
        free = bounds[:, 1] > bounds[:, 0]
        def whole(shares):
            shares = shares.reshape(int(free.sum()), -1)
            numbers = np.repeat(bounds[:, :1], shares.shape[1], axis=1)
            numbers[free] += shares * (bounds[free, 1:] - bounds[free, :1])
            return decode(numbers)
        def cost(shares):
            arms, fits = whole(shares)
            fits = fits & (arms[3] > 1e-3) & (arms[4] > 1e-3) & np.isfinite(arms).all(axis=0)
            arms = np.where(fits, arms, np.array([[-0.3], [0.4], [1.0], [0.8], [0.8], [1.0]]))
            torque, excess = site.proven(arms)
            return np.where(fits, np.where(excess <= 1e-9, torque, 1e6 * (1 + np.minimum(excess, 1e3))), 1e10)
        if free.any():
            answer = differential_evolution(
                cost, [(0, 1)] * int(free.sum()), popsize=population, maxiter=generations, tol=1e-10, seed=seed, polish=False,
                init="sobol", mutation=(0.4, 1.0), recombination=0.85, vectorized=True, updating="deferred")
            value, shares = float(answer.fun), answer.x
        else:
            value, shares = float(cost(np.zeros((0, 1)))[0]), np.zeros(0)
        if value < 1e6 and (best is None or value < best[0]):
            best = (value, [float(number) for number in whole(shares)[0][:, 0]])
    return best


#: What is asked beside the torque: the block's further fields, and what their answer is called.
AIMS = {
    "least_link_force": {"storm_speed_m_s": 30.0},
    "least_shaft_travel": {},
    "nearest_place": {"place": {"x_m": -0.25, "y_m": 0.2}},
}


def tape_proof_jobs(path):
    """Names and jobs of a list of changes to sites that every tape error has to leave working."""
    with open(path, encoding="utf-8") as file:
        changes = json.load(file)["jobs"]
    for change in changes:
        with open(pathlib.Path(path).parent / "sites" / change["site"], encoding="utf-8") as file:
            job = json.load(file)
        job["tape"] = change["tape"]
        job["setout"].update(change.get("setout", {}), tape_proof=True)
        job.update(change.get("job", {}))
        yield change["name"], job


def answer_of(path, aim=None):
    with open(path, encoding="utf-8") as file:
        job = json.load(file)
    if aim:
        job["setout"].update(aim=aim, **AIMS[aim])
    return best_of(path.split("/")[-1], job)


def best_of(name, job, sampled=(91, 361, 1441), slips=1e-5, **budget):
    began = time.perf_counter()
    line = {"site": name, "torque_n_m": None, "arm": None, "excess": None}
    # A corner may slip through between the sampled angles: then the same again with more of them.
    for angles in sampled:
        best = set_out(job, angles=angles, **budget)
        if not best:
            break
        torque, excess = Site(job, 3601).proven(np.array(best[1])[:, None])
        if excess[0] > slips and angles < 1441:
            continue
        line.update(torque_n_m=float(torque[0]), arm=best[1], excess=float(excess[0]))
        break
    return line, time.perf_counter() - began


if __name__ == "__main__":
    if sys.argv[1] == "--proof":
        # Each job by itself, so that some can be made anew: the answers of the others stay.
        out, asked = pathlib.Path(sys.argv[2]), sys.argv[4:]
        answers = json.loads(out.read_text(encoding="utf-8"))["answers"] if out.exists() else []
        for name, job in tape_proof_jobs(sys.argv[3]):
            if asked and name not in asked:
                continue
            # Sixty-four corners cost their time: fewer angles and generations, and a tenth of a millimetre that slips between the angles stays.
            line, seconds = best_of(name, job, (61, 361, 1441), 1e-4, generations=110, population=11)
            print(json.dumps({**line, "seconds": round(seconds, 2)}), flush=True)
            answers = [answer for answer in answers if answer["site"] != name] + [line]
            versions = f"SciPy {scipy.__version__} differential_evolution, NumPy {np.__version__}"
            out.write_text(json.dumps({"made_by": versions, "answers": answers}, indent=1) + "\n", encoding="utf-8")
    elif sys.argv[1] in ("--fixture", "--aims"):
        if sys.argv[1] == "--fixture":
            answers = [answer_of(path)[0] for path in sys.argv[3:]]
        else:
            answers = []
            for path, aim in ((path, aim) for path in sys.argv[3:] for aim in AIMS):
                line = answer_of(path, aim)[0]
                answers.append({"site": line["site"], "aim": aim, **AIMS[aim], "least": line.pop("torque_n_m"), "arm": line["arm"], "excess": line["excess"]})
        versions = f"SciPy {scipy.__version__} differential_evolution, NumPy {np.__version__}"
        with open(sys.argv[2], "w", encoding="utf-8") as file:
            json.dump({"made_by": versions, "answers": answers}, file, indent=1)
            file.write("\n")
    else:
        for path in sys.argv[1:]:
            line, seconds = answer_of(path)
            print(json.dumps({**line, "seconds": round(seconds, 2)}), flush=True)
