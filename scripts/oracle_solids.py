#!/usr/bin/env python3
"""Look at the timbers of whole roofs with an outside solid library.

Reads the JSON lines of the example `solids_for_oracle`, a house each, and
builds every timber with the PyPI package manifold3d, a general library of
solids, which also cuts its faces into triangles. The package is for tests
only: it is neither shipped nor linked. Of every house:

  * every timber is closed (each edge is walked once each way), in one piece,
    and has the volume that the solution says;
  * no two timbers share more than 1 mm³.

Gaps are not looked at, nor faces that run through others of the same timber.

    python3 -m venv target/solids-oracle-venv
    target/solids-oracle-venv/bin/pip install manifold3d==3.5.4 numpy==2.4.6
    cargo run --release -p roof --example solids_for_oracle -- 300 1 \\
        | target/solids-oracle-venv/bin/python scripts/oracle_solids.py 300

Exit code 1 when any timber or pair fails, a house has no roof, or fewer houses
came than asked for.
"""

import json
import sys
import time

import numpy as np
from manifold3d import Error, Manifold, Mesh64, triangulate

# mm³: what two timbers may share at most, the contract of the project.
MOST_SHARED = 1.0
# mm³: faces are flat to some 1e-5 mm only, so that their volume hangs a little
# on how they are cut into triangles; less than this is no wood.
SAME_VOLUME = 1.0
# mm³ per m³.
CUBIC_METRE = 1e9

# Places are given in mm with the origin at the plates, up to some 20,000 mm
# off. Mesh64 keeps them as doubles, 4e-12 mm apart there (the package's Mesh
# keeps single floats, 2e-3 mm apart, which is far too coarse). Solids that size
# are built to a tolerance of 2e-8 mm, 0.02 mm³ over a square metre of contact.
# `sees_a_sliver` shows that a thousandth of the contract is still seen.
FAR = (20000.0, 20000.0, 5000.0)
SLIVER_WITHIN = 1e-3


def sees_a_sliver():
    """Whether twice the wood allowed is found between two slabs, a square metre each, far off and turned."""
    side, thick = 1000.0, 100.0
    overlap = 2.0 * MOST_SHARED / side**2
    slabs = [
        Manifold.cube((side, side, thick)).translate((0.0, 0.0, up)).rotate((10.0, 20.0, 30.0)).translate(FAR)
        for up in (0.0, thick - overlap)
    ]
    return abs((slabs[0] ^ slabs[1]).volume() - 2.0 * MOST_SHARED) < SLIVER_WITHIN


def triangles_of(points, ring):
    """A flat ring cut into triangles, as point numbers."""
    if len(ring) == 3:
        return [ring]
    at = points[ring] - points[ring[0]]
    normal = np.cross(at[1:-1], at[2:]).sum(axis=0)
    normal /= np.sqrt(normal @ normal)
    # Seen from outside: two axes in the plane of the face.
    right = np.cross(np.eye(3)[np.argmin(np.abs(normal))], normal)
    right /= np.sqrt(right @ right)
    flat = np.column_stack((at @ right, at @ np.cross(normal, right)))
    return np.asarray(ring)[triangulate([flat])]


def solid_of(member):
    """A timber in the outside library; faces meet where they share point numbers."""
    points = np.array(member["points"])
    triangles = np.concatenate([triangles_of(points, ring) for ring in member["faces"]])
    return Manifold(Mesh64(points, triangles.astype(np.uint64)))


def pairs_of(members):
    """Pairs whose boxes share more than two timbers may: no other pair can share as much."""
    low = np.array([np.min(m["points"], axis=0) for m in members])
    high = np.array([np.max(m["points"], axis=0) for m in members])
    for a in range(len(members) - 1):
        common = np.minimum(high[a], high[a + 1 :]) - np.maximum(low[a], low[a + 1 :])
        boxes = np.prod(np.maximum(common, 0.0), axis=1)
        yield from ((a, a + 1 + int(k)) for k in np.nonzero(boxes > MOST_SHARED)[0])


class Worst:
    """The largest of many figures, and where."""

    def __init__(self):
        self.value, self.where = 0.0, "nowhere"

    def at(self, value, where):
        if not value <= self.value:
            self.value, self.where = value, where

    def __str__(self):
        return f"{self.value:.2g} mm³ ({self.where})"


def look_at(house, off, shared):
    """Counts of timbers and pairs of a house, and all that is wrong with it in words."""
    if "fault" in house:
        return 0, 0, [house["fault"]]
    members, seed, wrong = house["members"], house["seed"], []
    if not members:
        return 0, 0, ["it has no timbers"]
    solids = []
    for member in members:
        solid, mark, says = solid_of(member), member["mark"], member["m3"] * CUBIC_METRE
        solids.append(solid)
        if solid.status() != Error.NoError:
            wrong.append(f"{mark} is not closed: {solid.status().name}")
            continue
        pieces = len(solid.decompose())
        if pieces != 1:
            wrong.append(f"{mark} is in {pieces} pieces")
        difference = abs(solid.volume() - says)
        off.at(difference, f"seed {seed}, {mark}")
        if not (solid.volume() > 0.0 and difference <= SAME_VOLUME):
            wrong.append(f"{mark} has {solid.volume():.1f} mm³, the solution says {says:.1f} mm³")
    pairs = 0
    for a, b in pairs_of(members):
        # What is not closed has been told, and shares nothing with anything.
        if Error.NoError != solids[a].status() or Error.NoError != solids[b].status():
            continue
        pairs += 1
        common, both = solids[a] ^ solids[b], f"{members[a]['mark']} and {members[b]['mark']}"
        if common.status() != Error.NoError:
            wrong.append(f"what {both} share is not known: {common.status().name}")
            continue
        shared.at(common.volume(), f"seed {seed}, {both}")
        if not common.volume() <= MOST_SHARED:
            wrong.append(f"{both} share {common.volume():.1f} mm³")
    return len(members), pairs, wrong


def main():
    asked = int(sys.argv[1]) if len(sys.argv) > 1 else 1
    before = time.time()
    houses = timbers = pairs = faults = 0
    off, shared = Worst(), Worst()
    if not sees_a_sliver():
        faults += 1
        print("the solid library does not see wood that is shared")
    for text in sys.stdin:
        house = json.loads(text)
        houses += 1
        members, looked, wrong = look_at(house, off, shared)
        timbers, pairs, faults = timbers + members, pairs + looked, faults + len(wrong)
        for words in wrong:
            print(f"seed {house['seed']} {house['how']}: {words}")
    print(f"{houses} houses, {timbers} timbers, {pairs} pairs, {faults} faults")
    print(f"volume off by at most {off}; most wood shared {shared}")
    print(f"{time.time() - before:.1f} s")
    sys.exit(1 if faults or houses < asked else 0)


if __name__ == "__main__":
    main()
