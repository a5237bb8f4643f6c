"""Sets every answer that tape errors have to leave working as wrongly as the tape may, at all 64 corners, by the oracle's own mechanics.

    python proof.py PATH-OF-THE-SETOUT-EXAMPLE

The jobs are those of tests/setout/proof_jobs.json. Each answer's arm, and each other arm that it offers, is moved to every corner of the
tape's errors and looked at at 3601 leaf angles: does it assemble, keep the sense of its lever, its least lever, its shaft travel and its
clearance. The worst that the answer says of the corners is compared with the worst that is found here. Ends with a code other than 0 when
anything deviates. Needs what requirements.txt pins.
"""

import json
import pathlib
import subprocess
import sys

FOLDER = pathlib.Path(__file__).resolve().parent.parent / "setout"
sys.path.insert(0, str(FOLDER))

import oracle  # noqa: E402  (found through the folder above)

#: Rounding of the two arithmetics, m, rad or plain; the search itself stays twenty times further inside.
ROUNDING = 1e-9
#: What 3601 angles see of an extreme less than there is, as a fraction.
SAMPLED = 1e-6


def arm_of(stand):
    keys = ("shaft_x_m", "shaft_y_m", "bracket_u_m", "crank_m", "link_m")
    return oracle.np.array([[stand[key]] for key in keys] + [[1.0 if stand["elbow"] == "left" else -1.0]])


def corners(site, arm):
    """The arm at all 64 corners, a column each."""
    return oracle.np.hstack([site.moved(arm, corner) for corner in range(64)])


def wrong_with(job, answer):
    """What is wrong with an answer, a line each."""
    best = answer.get("best")
    if best is None:
        return ["nothing found"]
    site, wrong = oracle.Site(job, 3601), []
    for name, stand in [("best", best)] + [(f"other {index}", other) for index, other in enumerate(answer["others"])]:
        arm = arm_of(stand)
        _, planned = site.evaluate(arm)
        torque, excess = site.evaluate(corners(site, arm), planned=False)
        if planned[0] > ROUNDING:
            wrong.append(f"{name}: exceeds a limit as planned by {planned[0]}")
        if excess.max() > ROUNDING:
            wrong.append(f"{name}: exceeds a limit at corner {int(excess.argmax())} by {excess.max()}")
        if name != "best":
            continue
        told = best["at_corners"]["shaft_torque_n_m"]
        if abs(told / torque.max() - 1) > SAMPLED:
            wrong.append(f"worst torque: {told} N·m said, {torque.max()} N·m found")
        reserve = job["operator"]["rated_torque_n_m"] / torque.max()
        if abs(best["worst_reserve"] / reserve - 1) > SAMPLED:
            wrong.append(f"worst reserve: {best['worst_reserve']} said, {reserve} found")
        if best["worst_reserve"] > best["reserve"]:
            wrong.append("the worst reserve is better than the planned one")
    without = answer["without_proof"]
    if without is None or without["shaft_torque_n_m"] > best["shaft_torque_n_m"] * (1 + SAMPLED):
        wrong.append("the proof is said to cost less than nothing")
    return wrong


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    passed = failed = 0
    for name, job in oracle.tape_proof_jobs(FOLDER / "proof_jobs.json"):
        done = subprocess.run([sys.argv[1], "-"], input=json.dumps(job), capture_output=True, text=True, check=False)
        wrong = wrong_with(job, json.loads(done.stdout)) if done.stdout else [done.stderr]
        for line in wrong:
            print(f"{name}: {line}")
        passed, failed = passed + (not wrong), failed + bool(wrong)
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed or passed < 12 else 0)


if __name__ == "__main__":
    main()
