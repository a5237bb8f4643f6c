"""Holds the native example to independent tables and to an equilibrium solver of its own.

    python run.py PATH-OF-THE-PLAN-EXAMPLE

Ends with a code other than 0 when anything deviates. Needs what requirements.txt pins.
"""

import sys

import aisc
import contact
import marks
import motion
import statics
import storm
from example import Example


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    example = Example(sys.argv[1])
    passed, failed = 0, 0
    for check in (*aisc.checks(example), *contact.checks(example), *marks.checks(example), *motion.checks(example), *statics.checks(example),
                  *storm.checks(example)):
        if check is None:
            passed += 1
        else:
            failed += 1
            print(check)
    print(f"{passed} passed, {failed} failed")
    # A run that compared nothing has shown nothing.
    sys.exit(1 if failed or passed < 2000 else 0)


if __name__ == "__main__":
    main()
