"""The full curve from the equilibrium of the free bodies, without any closed form of the product.

Positions come from the two bar lengths by a root finder. Leaf, link and crank are cut free; the eight forces at their pins and the
shaft's torque are the nine unknowns of nine equations, solved as a linear system. Loads are integrated: pressure over the leaf and the
collar, weight as a vector about a tilted axis.
"""

import numpy as np
from scipy.integrate import quad
from scipy.optimize import minimize_scalar, root

from jobs import back, random_jobs

G = 9.80665
JOBS = 24
TOLERANCE = 1e-8


def cross(a, b):
    return a[0] * b[1] - a[1] * b[0]


class Leaf:
    """Moments about the hinge, by integration."""

    def __init__(self, job):
        leaf, wind, lean = job["leaf"], job["wind"], job["lean"]
        self.mass, self.length = leaf["mass_kg"], leaf["length_m"]
        pressure = 0.5 * wind["air_density_kg_m3"] * wind["speed_m_s"] ** 2 * wind["force_coefficient"]
        per_metre = pressure * leaf["wind_area_m2"] / self.length
        self.wind = quad(lambda x: per_metre * x, 0, self.length)[0]
        self.opening = np.radians(job["swing"]["open_deg"])
        self.hinges = job["hinges"]
        self.rises = self.hinges["kind"] == "rising"
        self.friction = {sign: self.on_ramp(sign) if self.rises else self.hinge_friction(self.hinges) for sign in (1, -1)}
        # The hinge axis leans towards downhill; the plane the leaf swings in falls that way.
        lam, psi = np.radians(lean["angle_deg"]), np.radians(lean["downhill_deg"])
        self.psi = psi
        self.axis = np.array([np.sin(lam) * np.cos(psi), np.sin(lam) * np.sin(psi), np.cos(lam)])
        self.fall = np.array([np.cos(lam) * np.cos(psi), np.cos(lam) * np.sin(psi), -np.sin(lam)])
        self.side = np.cross(self.axis, self.fall)

    def hinge_friction(self, hinges):
        if hinges["kind"] == "measured":
            return hinges["pull_radius_m"] * (hinges["pull_open_n"] + hinges["pull_close_n"]) / 2
        weight = self.mass * G
        mu, spacing = hinges["friction_coefficient"], hinges["spacing_m"]
        # Horizontal forces at both hinges: they sum to nothing and hold the weight's moment.
        upper, lower = np.linalg.solve([[1, 1], [spacing, 0]], [0, weight * self.length / 2])
        pins = mu * hinges["pin_radius_m"] * (abs(upper) + abs(lower))
        inner, outer = hinges["thrust_inner_radius_m"], hinges["thrust_outer_radius_m"]
        pressure = weight / (np.pi * (outer**2 - inner**2))
        collar = quad(lambda r: mu * pressure * 2 * np.pi * r * r, inner, outer, epsabs=0, epsrel=1e-13)[0]
        return pins + collar

    def on_ramp(self, sign):
        """Moment of ramp and pins against a leaf that moves steadily, its weight on the ramp included, positive against the movement.

        On the cylinder of each contact, round and along the axis: the ramp's force is square to it and against the way of sliding, the pins'
        friction against theirs. Where the pins hold the leaf up, nothing presses on the ramp.
        """
        hinges, weight = self.hinges, self.mass * G
        mu, inner, outer = hinges["friction_coefficient"], hinges["thrust_inner_radius_m"], hinges["thrust_outer_radius_m"]
        # Radius that gives a flat collar its friction: pressure even, or falling as 1/r.
        power = 2 if hinges["collar"] == "uniform_pressure" else 1
        ring = lambda more: quad(lambda r: r ** (power - 1 + more), inner, outer, epsabs=0, epsrel=1e-13)[0]
        radius, pin = ring(1) / ring(0), hinges["pin_radius_m"]
        slope = hinges["rise_m"] / self.opening
        way = lambda r: sign * np.array([r, slope]) / np.hypot(r, slope)
        normal = np.array([-slope, radius]) / np.hypot(radius, slope)
        pins = -2 * mu * weight * self.length / 2 / hinges["spacing_m"] * way(pin)
        # Unknowns: force square to the ramp, moment of the drive. Balance along the axis and about it.
        ramp = normal - mu * way(radius)
        square, moment = np.linalg.solve([[ramp[1], 0], [radius * ramp[0], 1]], [weight - pins[1], -pin * pins[0]])
        if square < 0:
            along = weight / np.hypot(*pins)
            moment = sign * pin * np.hypot(*pins) * np.sqrt(1 - along**2)
        return sign * moment

    def gravity(self, theta):
        """Moment of the weight about the leaning axis, positive opening."""
        turned = theta - self.psi
        arm = self.length / 2 * (np.cos(turned) * self.fall + np.sin(turned) * self.side)
        return float(self.axis @ np.cross(arm, [0, 0, -self.mass * G]))

    def outside(self, theta, sign, against):
        """Moment on a leaf that moves steadily, all but the link's: friction and wind against it, or wind with it."""
        wind = -sign * self.wind if against else sign * self.wind
        return -sign * self.friction[sign] + wind + self.gravity(theta)


class Arm:
    def __init__(self, arm):
        self.shaft = np.array([arm["shaft_x_m"], arm["shaft_y_m"]])
        self.bracket = np.array([arm["bracket_u_m"], arm["bracket_v_m"]])
        self.crank, self.link = arm["crank_m"], arm["link_m"]
        self.side = 1 if arm["elbow"] == "left" else -1

    def pins(self, theta):
        """Bracket and elbow at a leaf angle."""
        turn = np.array([[np.cos(theta), -np.sin(theta)], [np.sin(theta), np.cos(theta)]])
        bracket = turn @ self.bracket
        reach = bracket - self.shaft
        across = self.side * np.array([-reach[1], reach[0]]) / np.hypot(*reach)

        def gaps(elbow):
            one, other = elbow - self.shaft, bracket - elbow
            return [one @ one - self.crank**2, other @ other - self.link**2]

        def slopes(elbow):
            return [2 * (elbow - self.shaft), -2 * (bracket - elbow)]

        start = self.shaft + reach * self.crank / (self.crank + self.link) + across * 0.5 * min(self.crank, self.link)
        elbow = root(gaps, start, jac=slopes, tol=1e-15).x
        # Newton's steps until nothing moves.
        for _ in range(4):
            elbow = elbow - np.linalg.solve(slopes(elbow), gaps(elbow))
        assert cross(reach, elbow - self.shaft) * self.side > 0, "the other branch"
        return bracket, elbow

    def statics(self, theta, outside):
        """Shaft torque without losses, link force (positive in compression), crank direction, lever of the elbow."""
        bracket, elbow = self.pins(theta)
        # Unknowns: hinge x y, bracket x y (on the leaf), elbow x y (on the link), shaft x y (on the crank), torque.
        system, right = np.zeros((9, 9)), np.zeros(9)
        system[0, [0, 2]] = system[1, [1, 3]] = 1
        system[2, 2], system[2, 3], right[2] = -bracket[1], bracket[0], -outside
        system[3, [2, 4]] = system[4, [3, 5]] = [-1, 1]
        away = bracket - elbow
        system[5, 2], system[5, 3] = away[1], -away[0]
        system[6, [4, 6]] = system[7, [5, 7]] = [-1, 1]
        lever = elbow - self.shaft
        system[8, 4], system[8, 5], system[8, 8] = lever[1], -lever[0], 1
        solved = np.linalg.solve(system, right)
        force = solved[2:4] @ away / self.link
        crank = np.arctan2(lever[1], lever[0])
        return solved[8], force, crank, cross(lever, away) / (self.crank * self.link)


def shaft_torque(ideal, outside, sign, job):
    """With losses: they fall to whoever is driven. The drive gives the leaf the opposite of what acts from outside."""
    return ideal * back(job) if -outside * sign < 0 else ideal / job["operator"]["arm_efficiency"]


def solve(job):
    leaf, arm = Leaf(job), Arm(job["arm"])
    opening = np.radians(job["swing"]["open_deg"])

    def row(theta):
        out, crank, bend = {}, 0, 0
        for name, sign in (("open", 1), ("close", -1)):
            against = leaf.outside(theta, sign, True)
            torque, force, crank, bend = arm.statics(theta, against)
            out[f"leaf_torque_{name}_n_m"] = -against
            out[f"link_force_{name}_n"] = force
            out[f"shaft_torque_{name}_n_m"] = shaft_torque(torque, against, sign, job)
            following = leaf.outside(theta, sign, False)
            torque = arm.statics(theta, following)[0]
            out[f"shaft_torque_{name}_following_n_m"] = shaft_torque(torque, following, sign, job)
        return out, crank, bend

    return leaf, row, opening


def largest(row, angles, rows):
    """The largest shaft torque, refined between the rows beside the largest row, each way."""
    best = 0
    for name in ("shaft_torque_open_n_m", "shaft_torque_close_n_m"):
        sizes = [abs(values[name]) for values, _, _ in rows]
        top = int(np.argmax(sizes))
        low, high = angles[max(top - 1, 0)], angles[min(top + 1, len(angles) - 1)]
        found = minimize_scalar(lambda t, name=name: -abs(row(t)[0][name]), bounds=(low, high), method="bounded",
                                options={"xatol": 1e-10})
        best = max(best, sizes[top], -found.fun)
    return best


def differences(job, plan):
    leaf, row, opening = solve(job)
    angles = np.linspace(0, opening, job["samples"])
    rows = [row(theta) for theta in angles]
    computed = {name: np.array([values[name] for values, _, _ in rows]) for name in rows[0][0]}
    cranks = np.unwrap([crank for _, crank, _ in rows])
    computed["shaft_deg"] = np.degrees(cranks - cranks[0])
    # Within a degree of straight the root finder itself loses digits.
    bent = np.array([abs(bend) for _, _, bend in rows]) > 0.02
    for name, values in computed.items():
        printed = np.array([point[name] for point in plan["curve"]])
        scale = np.max(np.abs(values)) or 1
        off = np.max(np.abs(printed - values)[bent], initial=0) / scale
        yield name, off
    ramp = plan["loads"].get("ramp", {"weight_n_m": 0})
    friction = leaf.friction[1] - ramp["weight_n_m"]
    yield "hinge_friction_n_m", abs(plan["loads"]["hinge_friction_n_m"] - friction) / max(friction, 1)
    if leaf.rises:
        weight = leaf.mass * G * leaf.hinges["rise_m"] / leaf.opening
        yield "ramp weight_n_m", abs(ramp["weight_n_m"] - weight) / max(abs(weight), 1)
        closing = leaf.friction[-1] + weight
        yield "ramp friction_close_n_m", abs(ramp["friction_close_n_m"] - closing) / max(closing, 1)
    yield "wind_n_m", abs(plan["loads"]["wind_n_m"] - leaf.wind) / max(leaf.wind, 1)
    peak = largest(row, angles, rows)
    yield "peak", abs(plan["peak"]["shaft_torque_n_m"] / peak - 1)
    yield "utilisation", abs(plan["rating"]["utilisation"] * job["operator"]["rated_torque_n_m"] / peak - 1)


def checks(example):
    solved = 0
    for number, job in enumerate(random_jobs()):
        if solved == JOBS:
            return
        plan = example.plan(job)
        if plan is None:
            continue
        solved += 1
        for name, off in differences(job, plan):
            yield None if off <= TOLERANCE else f"random job {number}: {name} deviates by {off:.2e}"
