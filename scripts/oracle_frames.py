#!/usr/bin/env python3
"""Compare plane frames with an outside frame analysis.

Reads the JSON lines of the example `frames_for_oracle` and compares reactions,
end forces, movements of nodes, and forces and movements between the ends of
bars with the PyPI package PyNiteFEA, a general analysis of frames in space.
The package is for tests only: it is neither shipped nor linked. Neither side
counts the deflection of shear.

    python3 -m venv target/frame-oracle-venv
    target/frame-oracle-venv/bin/pip install PyNiteFEA==3.2.0
    cargo run --release -p strength --example frames_for_oracle -- 500 1 \\
        | target/frame-oracle-venv/bin/python scripts/oracle_frames.py

Exit code 1 when any frame disagrees or fewer frames came than asked for.
"""

import json
import sys
import time

from Pynite import FEModel3D

# Of the largest figure of its sort in the frame: force, moment, shift, turn.
TOLERANCE = 1e-6
# N and mm: below these a whole sort of figures counts as nought.
NOUGHT = {"force": 1e-6, "moment": 1e-3, "shift": 1e-6, "turn": 1e-9}
# Any will do for what moves out of the plane.
SHEAR_MODULUS = 700.0


def model_of(frame):
    """The frame in the outside analysis, in its plane."""
    model = FEModel3D()
    # E is 1, so areas and second moments are the stiffnesses.
    model.add_material("one", 1.0, SHEAR_MODULUS, 0.3, 0.0)
    stiff = {bar[end] for bar in frame["bars"] for end, hinge in zip(("from", "to"), bar["hinges"]) if not hinge}
    holds = {s["node"]: s["holds"] for s in frame["supports"]}
    for k, (x, y) in enumerate(frame["nodes"]):
        model.add_node(f"n{k}", x, y, 0.0)
        x_hold, y_hold, turn = holds.get(k, (False, False, False))
        # A node where all bars are hinged has no turn of its own.
        idle = k not in stiff and turn is False
        model.def_support(f"n{k}", x_hold is True, y_hold is True, True, True, True, turn is True or idle)
        for way, hold in zip(("DX", "DY", "RZ"), (x_hold, y_hold, turn)):
            if not isinstance(hold, bool):
                model.def_support_spring(f"n{k}", way, hold)
    for k, bar in enumerate(frame["bars"]):
        model.add_section(f"s{k}", bar["ea"], bar["ei"], bar["ei"], bar["ei"])
        model.add_member(f"b{k}", f"n{bar['from']}", f"n{bar['to']}", "one", f"s{k}")
        model.def_releases(f"b{k}", Rzi=bar["hinges"][0], Rzj=bar["hinges"][1])
    for load in frame["loads"]:
        if "node" in load:
            for way, key in (("FX", "fx"), ("FY", "fy"), ("MZ", "m")):
                model.add_node_load(f"n{load['node']}", way, load[key])
        elif "at" in load:
            for way, key in (("FX", "fx"), ("FY", "fy")):
                model.add_member_pt_load(f"b{load['bar']}", way, load[key], load["at"])
        else:
            for way, key in (("FX", "fx"), ("FY", "fy")):
                start, end = load[key]
                model.add_member_dist_load(f"b{load['bar']}", way, start, end, load.get("from"), load.get("to"))
    model.analyze_linear()
    return model


def figures(frame, model):
    """(sort, ours, theirs, where) of everything compared."""
    for k, moved in enumerate(frame["moved"]):
        node = model.nodes[f"n{k}"]
        yield "shift", moved[0], node.DX["Combo 1"], f"node {k} x"
        yield "shift", moved[1], node.DY["Combo 1"], f"node {k} y"
        yield "turn", moved[2], node.RZ["Combo 1"], f"node {k} turn"
    for support, reaction in zip(frame["supports"], frame["reactions"]):
        node = model.nodes[f"n{support['node']}"]
        for sort, way, ours in zip(("force", "force", "moment"), ("RxnFX", "RxnFY", "RxnMZ"), reaction):
            yield sort, ours, getattr(node, way)["Combo 1"], f"support at node {support['node']} {way}"
    for k, (start, end) in enumerate(frame["ends"]):
        member = model.members[f"b{k}"]
        theirs = [float(v) for v in member.f("Combo 1").flatten()]
        # Our axes: along the bar and 90 degrees anticlockwise. Theirs turn the other way on bars that run left.
        (ax, ay), (bx, by) = (frame["nodes"][frame["bars"][k][end_]] for end_ in ("from", "to"))
        length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
        across = (-(by - ay) / length, (bx - ax) / length)
        turn = member.T()
        same = 1.0 if turn[1, 0] * across[0] + turn[1, 1] * across[1] > 0 else -1.0
        for name, ours, first in (("start", start, 0), ("end", end, 6)):
            yield "force", ours[0], theirs[first], f"bar {k} {name} along"
            yield "force", ours[1], same * theirs[first + 1], f"bar {k} {name} across"
            yield "moment", ours[2], same * theirs[first + 5], f"bar {k} {name} moment"
        for there in frame["between"][k]:
            x = there["at"]
            # Their axial force is positive in compression and their moment in hogging.
            yield "force", there["n"], -member.axial(x, "Combo 1"), f"bar {k} N at {x:.0f}"
            yield "force", there["v"], same * member.shear("Fy", x, "Combo 1"), f"bar {k} V at {x:.0f}"
            yield "moment", there["m"], -same * member.moment("Mz", x, "Combo 1"), f"bar {k} M at {x:.0f}"
            yield "shift", there["across"], same * member.deflection("dy", x, "Combo 1"), f"bar {k} across at {x:.0f}"


def main():
    asked = int(sys.argv[1]) if len(sys.argv) > 1 else 1
    frames = disagreements = compared = 0
    worst, worst_where, mechanisms, faults = 0.0, "", 0, 0
    kinds = {}
    before = time.time()
    for number, text in enumerate(sys.stdin):
        frame = json.loads(text)
        if "mechanisms" in frame:
            mechanisms = frame["mechanisms"]
            continue
        if "fault" in frame:
            faults += 1
            print(f"line {number}: {frame['fault']}")
            continue
        frames += 1
        kinds[frame["kind"]] = kinds.get(frame["kind"], 0) + 1
        found = list(figures(frame, model_of(frame)))
        largest = dict(NOUGHT)
        for sort, _, theirs, _ in found:
            largest[sort] = max(largest[sort], abs(theirs))
        off = [(abs(ours - theirs) / largest[sort], where, ours, theirs) for sort, ours, theirs, where in found]
        compared += len(off)
        most = max(off)
        if most[0] > worst:
            worst, worst_where = most[0], f"line {number}, {most[1]}"
        if not most[0] <= TOLERANCE:
            disagreements += 1
            print(f"line {number} ({frame['kind']}): {most[1]}: {most[2]} here, {most[3]} outside")
    kinds = ", ".join(f"{n} {kind}" for kind, n in sorted(kinds.items()))
    print(f"{frames} frames ({kinds}), {compared} figures, {disagreements} disagreements, {faults} without an answer")
    print(f"worst relative difference {worst:.2e} ({worst_where}); {mechanisms} mechanisms left out")
    print(f"{time.time() - before:.1f} s")
    sys.exit(1 if disagreements or faults or frames < asked else 0)


if __name__ == "__main__":
    main()
