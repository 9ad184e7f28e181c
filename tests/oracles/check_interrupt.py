#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""An interrupt ends a long run of draws: what was drawn is written whole, the exit status is 130 as shells have it.

    check_interrupt.py PROGRAM
"""
import json
import os
import pathlib
import pty
import signal
import subprocess
import sys

ROUTE = pathlib.Path(__file__).resolve().parents[2] / "routes/4-bromoacetanilide/A1.json"
MOST = 1_000_000_000  # draws: hours, if nobody interrupts


def start(program):
    """The run, and its terminal once it has said that it draws."""
    terminal, end = pty.openpty()
    process = subprocess.Popen([program, "uncertainty", ROUTE, "--draws", str(MOST), "--format", "json"],
                               stdout=subprocess.PIPE, stderr=end)
    os.close(end)
    said = b""
    while b"of at most" not in said:
        said += os.read(terminal, 1000)  # OSError: the program ended
    return process, terminal


def said_later(terminal):
    said = b""
    try:
        while part := os.read(terminal, 1000):
            said += part
    except OSError:  # the other end is closed
        pass
    return said.decode()


def main(program):
    faults = []
    process, terminal = start(program)
    process.send_signal(signal.SIGINT)
    printed = process.stdout.read()
    if (status := process.wait()) != 130:
        faults.append(f"exit status {status} after an interrupt, not 130")
    if "stopped after" not in said_later(terminal):
        faults.append("the interrupted run does not say that it stopped")
    if not json.loads(printed)["certainty"]["interrupted"]:
        faults.append("the document does not say that the run was stopped")

    process, terminal = start(program)
    process.send_signal(signal.SIGTERM)
    if process.wait() != -signal.SIGTERM:
        faults.append("another signal does not end the program as usual")
    print("\n".join(faults) or "interrupted runs end as they should")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
