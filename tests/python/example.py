"""Runs the native example on a job."""

import json
import subprocess


class Example:
    def __init__(self, path):
        self.path = path

    def plan(self, job):
        """The plan of a job, or None where it is refused with its faults on standard error."""
        done = subprocess.run([self.path, "-"], input=json.dumps(job), capture_output=True, text=True, check=False)
        if done.returncode == 0:
            return json.loads(done.stdout)
        if done.returncode == 2 and json.loads(done.stderr)["errors"]:
            return None
        raise RuntimeError(f"exit code {done.returncode}: {done.stderr}")
