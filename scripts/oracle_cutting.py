#!/usr/bin/env python3
"""Compare cutting plans with a general MILP solver that knows no shared cuts.

Reads the JSON lines of the example `cutting_cases`: seeded random roofs with
our plan and our plan without sharing. For each, all patterns of boxes with a
kerf between them are given to HiGHS (the PyPI package highspy), which has at
least as long as our plan took. HiGHS is for tests only: it is neither shipped
nor linked.

    python3 -m venv target/cutting-oracle-venv
    target/cutting-oracle-venv/bin/pip install highspy==1.16.0 numpy==2.4.6
    cargo run --release -p order --example cutting_cases -- 60 1 120 \\
        | target/cutting-oracle-venv/bin/python scripts/oracle_cutting.py 60

Exit code 1 when our plan is worse than the solver's, when our proven plan
without sharing is not the solver's proven best, when a bound is above a plan,
when too few plans are proven in a second, or when fewer cases came than asked.
"""

import json
import math
import sys
import time

import highspy
import numpy as np

# What the solver has at least, s.
LEAST_SECONDS = 0.3
# With more patterns than this the solver has only some, and is not asked for the best.
MOST_PATTERNS = 3000
# Hundredths of a millimetre, rounded up as our sizes are; see crates/order/src/cutting/units.rs.
UNITS = 100
CREEP = 1e-4
# What the product promises: the part of plans proven the best within a second.
PROVEN_SHARE = 0.95
PROVEN_SECONDS = 1.0
INTEGER = 1e-6


def up(mm):
    return math.ceil(mm * UNITS - CREEP)


def patterns_of(sizes, room):
    """All maximal patterns of (length, count) in a room, most of the longest first; and whether these are all."""
    found = []

    def fill(at, left, take):
        if len(found) > MOST_PATTERNS:
            return
        if at == len(sizes):
            taken = dict(take)
            if all(length > left or taken.get(n, 0) >= count for n, (length, count) in enumerate(sizes)):
                found.append(take)
            return
        length, count = sizes[at]
        for n in range(min(count, left // length), -1, -1):
            fill(at + 1, left - n * length, take + [(at, n)] if n else take)

    fill(0, room, [])
    return found[:MOST_PATTERNS], len(found) <= MOST_PATTERNS


def solve(case, seconds):
    """The solver's value, and whether it is the best of all patterns."""
    kerf = up(case["kerf"])
    merged = {}
    for length, count in case["pieces"]:
        if count:
            merged[up(length)] = merged.get(up(length), 0) + count
    sizes = sorted(((length + kerf, count) for length, count in merged.items()), reverse=True)
    columns, whole = [], True
    for length, cost in case["stock"]:
        room = math.floor(length * UNITS + CREEP) - 2 * up(case["trim"]) + kerf
        fitting, all_of_them = patterns_of(sizes, room)
        whole = whole and all_of_them
        columns += [(cost, take) for take in fitting if take]
    solver = highspy.Highs()
    solver.silent()
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("time_limit", seconds)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 1e-7)
    inf = highspy.kHighsInf
    scale = max(cost for cost, _ in columns) / 100
    solver.addVars(len(columns), np.zeros(len(columns)), np.full(len(columns), inf))
    index = np.arange(len(columns), dtype=np.int32)
    solver.changeColsCost(len(columns), index, np.array([cost / scale for cost, _ in columns]))
    solver.changeColsIntegrality(len(columns), index, np.array([highspy.HighsVarType.kInteger] * len(columns)))
    rows = [([], []) for _ in sizes]
    for column, (_, take) in enumerate(columns):
        for item, n in take:
            rows[item][0].append(column)
            rows[item][1].append(float(n))
    for (where, n), (_, count) in zip(rows, sizes):
        solver.addRow(count, inf, len(where), np.array(where, dtype=np.int32), np.array(n))
    solver.run()
    status = solver.getModelStatus()
    times = solver.getSolution().col_value
    if len(times) != len(columns) or sum(times) < 1 - INTEGER:
        return None, False
    # Its figures are checked as well: whole numbers that cut every piece.
    times = [round(x) for x in times]
    cut = [0] * len(sizes)
    for n, (_, take) in zip(times, columns):
        for item, each in take:
            cut[item] += n * each
    if any(have < count for have, (_, count) in zip(cut, sizes)):
        return None, False
    value = sum(n * cost for n, (cost, _) in zip(times, columns))
    return value, whole and status == highspy.HighsModelStatus.kOptimal


def main():
    wanted = int(sys.argv[1]) if len(sys.argv) > 1 else 0
    faults, cases, proven, best_known, same = [], 0, 0, 0, 0
    ours, theirs, boxes, seconds, their_seconds = 0, 0, 0, [], 0.0
    better = 0
    for line in sys.stdin:
        case = json.loads(line)
        if "fault" in case:
            faults.append(f"case {case['case']}: {case['fault']}")
            continue
        cases += 1
        seconds.append(case["seconds"])
        proven += case["proven"] and case["seconds"] <= PROVEN_SECONDS
        for plan in ("", "boxes_"):
            value = case["boxes"] if plan else case["value"]
            if case[plan + "at_least"] > value:
                faults.append(f"case {cases}: a bound above the plan")
        if case["boxes"] < case["at_least"]:
            faults.append(f"case {cases}: a plan without sharing below the bound")
        started = time.perf_counter()
        value, best = solve(case, max(LEAST_SECONDS, case["seconds"]))
        their_seconds += time.perf_counter() - started
        if value is None:
            continue
        if case["value"] > value:
            faults.append(f"case {cases}: ours {case['value']}, the solver's {value}")
        better += case["value"] < value
        if best:
            best_known += 1
            if case["boxes_proven"]:
                same += 1
                if case["boxes"] != value:
                    faults.append(f"case {cases}: without sharing proven {case['boxes']}, the solver's best {value}")
        if case["aim"] == "Cost":
            ours, theirs, boxes = ours + case["value"], theirs + value, boxes + case["boxes"]
    seconds.sort()
    if cases:
        print(f"    {cases} roofs: {100 * proven / cases:.1f} % proven the best within {PROVEN_SECONDS:.0f} s; "
              f"median {1000 * seconds[cases // 2]:.0f} ms, longest {1000 * seconds[-1]:.0f} ms")
        print(f"    better than the solver's plan without shared cuts in {better}, worse in none unless said below; "
              f"the solver proved {best_known}, ours without sharing the same in {same}")
        if boxes and theirs:
            print(f"    shared cuts save {100 * (1 - ours / boxes):.2f} % of the cost; beside the solver's plan "
                  f"{100 * (1 - ours / theirs):.2f} %")
    if cases < wanted:
        faults.append(f"{cases} cases of {wanted}")
    if proven < PROVEN_SHARE * cases:
        faults.append(f"only {proven} of {cases} are proven within {PROVEN_SECONDS} s")
    for fault in faults:
        print(f"    FAULT: {fault}", file=sys.stderr)
    sys.exit(1 if faults or not cases else 0)


if __name__ == "__main__":
    main()
