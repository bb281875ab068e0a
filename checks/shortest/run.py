"""Sweeps one neutral case by shortest strings: reads the case on standard
input and writes its results on standard output (formats in ../case.go)."""

import json
import sys
import time

from machine import Machine


def main():
    case = json.load(sys.stdin)
    machine = Machine(case)
    start = time.perf_counter()
    positions = [machine.position(q) for q in case["at"]]
    micros = (time.perf_counter() - start) * 1e6 / len(positions)
    json.dump({"micros": micros, "positions": positions}, sys.stdout)


if __name__ == "__main__":
    try:
        main()
    except (ValueError, KeyError) as e:
        sys.exit(f"shortest: {e}")
