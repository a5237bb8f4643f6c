"""Marks taken with a tape from the lines they name, onto the ground.

Every printed mark says how far it is from the hinge line, from the axis line, from the leaf's face, from the hinge axis and from the latch end of
the axis line. Here the ground is laid out as somebody with a tape does it, once by offsets, once by the two diagonals, once from the face; the arm's own
places come from its triangle. All of them have to be the same points. Plane geometry; nothing here is the crate's.
"""

import math

from jobs import random_jobs

WITHIN_M = 1e-9


def elbow_of(arm, leaf):
    """Where crank and link meet, from the law of cosines."""
    shaft = complex(arm["shaft_x_m"], arm["shaft_y_m"])
    pin = complex(arm["bracket_u_m"], arm["bracket_v_m"]) * complex(math.cos(leaf), math.sin(leaf))
    way = pin - shaft
    crank, link, reach = arm["crank_m"], arm["link_m"], abs(way)
    angle = math.acos(max(-1.0, min(1.0, (crank**2 + reach**2 - link**2) / (2 * crank * reach))))
    side = 1 if arm["elbow"] == "left" else -1
    return shaft + crank * way / reach * complex(math.cos(angle), side * math.sin(angle))


def anchors_of(job):
    """The holes, from the direction of the closed crank."""
    arm, marks = job["arm"], job["marks"]
    shaft = complex(arm["shaft_x_m"], arm["shaft_y_m"])
    crank = elbow_of(arm, 0.0) - shaft
    turn = math.radians(marks["anchor_turn_deg"])
    along = crank / abs(crank) * complex(math.cos(turn), math.sin(turn))
    across = along * 1j
    middle = shaft + marks["anchor_offset_along_m"] * along + marks["anchor_offset_across_m"] * across
    half = 0.5 * marks["anchor_along_m"] * along, 0.5 * marks["anchor_across_m"] * across
    return [middle + one * half[0] + other * half[1] for one, other in ((1, -1), (1, 1), (-1, 1), (-1, -1))]


def taped(mark, job):
    """The mark on the ground: by offsets, from the face, by both diagonals (on its own side of the axis line)."""
    face, length = job["leaf"]["face_m"], job["leaf"]["length_m"]
    yield complex(mark["from_hinge_line_m"], mark["from_axis_line_m"])
    yield complex(mark["from_hinge_line_m"], face + mark["from_face_m"])
    # Two circles: about the hinge axis, and about the latch end of the axis line.
    near, far = mark["diagonal_m"], mark["from_latch_m"]
    along = (near**2 - far**2 + length**2) / (2 * length)
    across = math.sqrt(max(0.0, near**2 - along**2))
    yield complex(along, math.copysign(across, mark["from_axis_line_m"]))


def checks(example):
    """None for each mark that lands where it should, else what is wrong."""
    jobs = random_jobs(20261130)
    found = 0
    while found < 60:
        job = {**next(jobs), "schema": 2, "samples": 2}
        found_before = found
        face = (-0.03, 0.0, 0.0254, 0.05)[found % 4]
        job["leaf"] = {**job["leaf"], "face_m": face}
        job["marks"] = {"anchor_along_m": 0.25, "anchor_across_m": 0.15, "anchor_offset_along_m": -0.04,
                        "anchor_offset_across_m": 0.01, "anchor_turn_deg": 17.0 * (found % 5)}
        plan = example.plan(job)
        if plan is None:
            continue
        found += 1
        out, arm = plan["mark_out"], job["arm"]
        open_leaf = math.radians(job["swing"]["open_deg"])
        ground = [("shaft", out["shaft"], complex(arm["shaft_x_m"], arm["shaft_y_m"])),
                  ("elbow closed", out["elbow_closed"], elbow_of(arm, 0.0)),
                  ("elbow open", out["elbow_open"], elbow_of(arm, open_leaf)),
                  *(("anchor", mark, place) for mark, place in zip(out["anchors"], anchors_of(job), strict=True))]
        for name, mark, place in ground:
            for index, point in enumerate(taped(mark, job)):
                # Where both circles touch, the crossing is as loose as a root of a rounding.
                loose = 1e-6 if index == 2 else WITHIN_M
                yield None if abs(point - place) <= loose else f"marks, job {found_before}: {name} {index}: {point} is not {place}"
        pin = complex(arm["bracket_u_m"], arm["bracket_v_m"])
        for point in (complex(out["bracket_along_m"], out["bracket_across_m"]),
                      complex(out["bracket_along_m"], out["bracket_proud_m"] + face)):
            yield None if abs(point - pin) <= WITHIN_M else f"marks, job {found_before}: bracket: {point} is not {pin}"
