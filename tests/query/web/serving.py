# SPDX-License-Identifier: GPL-2.0-or-later
"""A server of our own for the tests: started on a free port, ended at the end."""

import contextlib
import subprocess
import time
import urllib.error
import urllib.request

TODAY = "2026-11-25"


@contextlib.contextmanager
def served(sheaf, library, *flags):
    """Yields the process and its port."""
    command = [sheaf, "serve", "--library", library, "--port", "0", "--today", TODAY, *flags]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as process:
        try:
            line = process.stdout.readline()
            if not line:
                raise RuntimeError("the server did not start: " + process.stderr.read())
            yield process, int(line.split("/ answers")[0].rsplit(":", 1)[1])
        finally:
            if process.poll() is None:
                process.terminate()


def get(port, target, timeout=10):
    """The status and the body."""
    try:
        with urllib.request.urlopen(f"http://127.0.0.1:{port}{target}", timeout=timeout) as response:
            return response.status, response.read()
    except urllib.error.HTTPError as error:
        return error.code, error.read()


def seconds_for_health(port, timeout=10):
    """How long /health takes, or None if it does not answer."""
    begin = time.monotonic()
    try:
        status, _ = get(port, "/health", timeout)
    except OSError:
        return None
    return time.monotonic() - begin if status == 200 else None
