// The 3-D view without a screen: where the eye stands, what a finger meets, what each timber looks like.

import { Matrix4, PerspectiveCamera } from "three";
import { describe, expect, test } from "vitest";
import type { Scene, SceneMember } from "../../src/core/bindings";
import { see } from "../../src/places/shape/view/camera";
import { Crowd } from "../../src/places/shape/view/crowd";
import {
  heightNearest,
  liftOfPitch,
  offLine,
  pitchLifted,
  PlumbDrag,
} from "../../src/places/shape/view/handles";
import { mix, parse, word, type Palette } from "../../src/places/shape/view/palette";
import { boxes, first, runOfPoint } from "../../src/places/shape/view/picking";
import * as sight from "../../src/places/shape/view/sight";
import { gather, keptMarks, paint, paintPairs, tint, type Look } from "../../src/places/shape/view/tints";

const LOW: sight.Point = [0, 0, -200];
const HIGH: sight.Point = [10800, 7200, 3100];
const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((k) => [
  k & 1 ? HIGH[0] : LOW[0],
  k & 2 ? HIGH[1] : LOW[1],
  k & 4 ? HIGH[2] : LOW[2],
]);
const SCENE: Scene = { low: [...LOW], high: [...HIGH], members: [], slopes: [] };
const [WIDTH, HEIGHT] = [360, 500];
const ROUND = { turn: sight.rad(-60), lift: sight.rad(30), field: sight.ROUND_FIELD };

function projector(from: sight.Sight) {
  return see(from, new PerspectiveCamera(), WIDTH, HEIGHT, SCENE);
}
function corners(from: sight.Sight) {
  const view = projector(from);
  return [0, 1, 2, 3, 4, 5, 6, 7].map((k) =>
    view.spot([CORNERS[k * 3]!, CORNERS[k * 3 + 1]!, CORNERS[k * 3 + 2]!]),
  );
}

describe("the eye", () => {
  test.each([
    ["round", ROUND],
    ["above", { turn: sight.rad(-90), lift: sight.rad(90), field: sight.FLAT_FIELD }],
    ["side", { turn: 0, lift: 0, field: sight.FLAT_FIELD }],
  ])("has the whole roof in the clear part of the screen, and touches its edge: %s", (_, way) => {
    const frame = { width: WIDTH, height: HEIGHT, top: 64, bottom: 76 };
    const spots = corners(sight.fitWithin(CORNERS, way, frame));
    const xs = spots.map((spot) => spot!.x);
    const ys = spots.map((spot) => spot!.y);
    expect(Math.min(...xs)).toBeGreaterThan(0);
    expect(Math.max(...xs)).toBeLessThan(WIDTH);
    expect(Math.min(...ys)).toBeGreaterThan(64);
    expect(Math.max(...ys)).toBeLessThan(HEIGHT - 76);
    const fill = Math.max(
      (Math.max(...xs) - Math.min(...xs)) / WIDTH,
      (Math.max(...ys) - Math.min(...ys)) / (HEIGHT - 64 - 76),
    );
    expect(fill).toBeGreaterThan(0.82);
  });

  test("from above sees north up and east right, and level lines without leaning", () => {
    const way = { turn: sight.rad(-90), lift: sight.rad(90), field: sight.FLAT_FIELD };
    const view = projector(sight.fit(CORNERS, way, WIDTH / HEIGHT));
    const [middle, east, north, over] = (
      [
        [5400, 3600, 0],
        [6400, 3600, 0],
        [5400, 4600, 0],
        [5400, 3600, 3000],
      ] as const
    ).map((point) => view.spot(point)!);
    expect(east!.x - middle!.x).toBeGreaterThan(20);
    expect(Math.abs(east!.y - middle!.y)).toBeLessThan(0.01);
    expect(middle!.y - north!.y).toBeGreaterThan(20);
    expect(Math.hypot(over!.x - middle!.x, over!.y - middle!.y)).toBeLessThan(0.5);
  });

  test("a look around and a turned head keep the eye where it stands, at eye height", () => {
    const stands = sight.standing([2000, 3000, 0], [9000, 3000, 0]);
    for (const looked of [stands, sight.lookedAround(stands, 1.2, 0.4), sight.lookedAround(stands, 0, -9)]) {
      const eye = sight.eye(looked);
      expect(eye[0]).toBeCloseTo(2000, 6);
      expect(eye[1]).toBeCloseTo(3000, 6);
      expect(eye[2]).toBeCloseTo(sight.EYE_HEIGHT, 6);
    }
    const ahead = sight.eye(sight.stepped(stands, sight.STEP));
    expect(ahead[0]).toBeCloseTo(2000 + sight.STEP, 6);
    expect(ahead[2]).toBeCloseTo(sight.EYE_HEIGHT, 6);
  });

  test("a zoom keeps what is under the fingers", () => {
    const way = { turn: sight.rad(-90), lift: sight.rad(90), field: sight.FLAT_FIELD };
    const from = sight.fit(CORNERS, way, WIDTH / HEIGHT);
    const before = projector(from).spot([8000, 6000, from.target[2]])!;
    const at = [(before.x / WIDTH) * 2 - 1, 1 - (before.y / HEIGHT) * 2] as const;
    const after = projector(sight.zoomed(from, 0.5, at, WIDTH / HEIGHT)).spot([8000, 6000, from.target[2]])!;
    expect(after.x).toBeCloseTo(before.x, 3);
    expect(after.y).toBeCloseTo(before.y, 3);
  });

  test("a move between two looks goes the short way round and ends where it should", () => {
    const a = sight.fit(CORNERS, { ...ROUND, turn: sight.rad(170) }, 1);
    const b = sight.fit(CORNERS, { ...ROUND, turn: sight.rad(-170) }, 1);
    sight.eye(a).forEach((value, k) => expect(sight.eye(sight.between(a, b, 0))[k]).toBeCloseTo(value, 3));
    expect(sight.between(a, b, 0.5).turn).toBeCloseTo(sight.rad(180), 9);
    const end = sight.eye(sight.between(a, b, 1));
    sight.eye(b).forEach((value, k) => expect(end[k]).toBeCloseTo(value, 3));
  });

  test("a ray through where a point is seen passes through the point", () => {
    const view = projector(sight.fit(CORNERS, ROUND, WIDTH / HEIGHT));
    const point: sight.Point = [7000, 1200, 900];
    const spot = view.spot(point)!;
    const ray = view.ray(spot.x, spot.y);
    const out = sight.less(point, ray.from);
    const off = sight.less(out, sight.along([0, 0, 0], ray.way, sight.dot(out, ray.way)));
    expect(Math.hypot(...off)).toBeLessThan(0.5);
    expect(view.spot(sight.along(ray.from, ray.way, -1000))).toBeNull();
  });
});

/** A square of two triangles at a height. */
const square = (x: number, z: number) => [
  x,
  0,
  z,
  x + 100,
  0,
  z,
  x + 100,
  100,
  z,
  x,
  0,
  z,
  x + 100,
  100,
  z,
  x,
  100,
  z,
];
const POINTS = new Float32Array([...square(0, 0), ...square(0, 500), ...square(1000, 0)]);
const RUNS = [0, 6, 12].map((from) => ({ first: from, count: 6 }));

describe("a finger", () => {
  const down = (x: number, y: number) => ({ from: [x, y, 5000], way: [0, 0, -1] }) as const;
  const around = boxes(POINTS, RUNS);

  test("meets the nearest run, and what is under it when that is hidden", () => {
    expect(first(down(30, 50), POINTS, RUNS, around, () => true)).toEqual({ run: 1, far: 4500 });
    expect(first(down(30, 50), POINTS, RUNS, around, (run) => run !== 1)).toEqual({ run: 0, far: 5000 });
    expect(first(down(1050, 50), POINTS, RUNS, around, () => true)?.run).toBe(2);
  });

  test("meets nothing beside the runs or behind the eye", () => {
    expect(first(down(500, 50), POINTS, RUNS, around, () => true)).toBeNull();
    const up = { from: [30, 50, 5000], way: [0, 0, 1] } as const;
    expect(first(up, POINTS, RUNS, around, () => true)).toBeNull();
  });

  test("a point of the buffer is of the run that holds it", () => {
    expect([0, 5, 6, 17].map((point) => runOfPoint(RUNS, point))).toEqual([0, 0, 1, 2]);
    expect([-1, 18].map((point) => runOfPoint(RUNS, point))).toEqual([-1, -1]);
  });
});

describe("a handle", () => {
  const from = sight.fit(CORNERS, ROUND, WIDTH / HEIGHT);

  test("follows the finger along its plumb line and does not jump when it is taken beside its middle", () => {
    const view = projector(from);
    const start: sight.Point = [5400, 1800, 1500];
    const spot = view.spot(start)!;
    const drag = new PlumbDrag(view, start, spot.x + 9, spot.y - 7);
    expect(drag.height(view, spot.x + 9, spot.y - 7)).toBeCloseTo(1500, 6);
    const higher = view.spot([5400, 1800, 2100])!;
    const ray = view.ray(higher.x, higher.y);
    expect(heightNearest(ray, 5400, 1800)).toBeCloseTo(2100, 0);
  });

  test("still works from straight above, where its plumb line is a point", () => {
    const way = { turn: sight.rad(-90), lift: sight.rad(90), field: sight.FLAT_FIELD };
    const view = projector(sight.fit(CORNERS, way, WIDTH / HEIGHT));
    const drag = new PlumbDrag(view, [5400, 1800, 1500], 180, 250);
    expect(drag.height(view, 180, 230)).toBeGreaterThan(1500);
    expect(drag.height(view, 180, 270)).toBeLessThan(1500);
  });

  test("a lift of a slope is a pitch in half degrees, within what the core takes", () => {
    expect(pitchLifted(40, 1800, 0)).toBe(40);
    expect(pitchLifted(40, 1800, liftOfPitch(40, 47.6, 1800))).toBe(47.5);
    expect(pitchLifted(40, 1800, -1e6)).toBe(5);
    expect(pitchLifted(40, 1800, 1e6)).toBe(80);
  });

  test("a run is measured square to the wall", () => {
    expect(
      offLine(
        [300, 400, 9],
        [
          [0, 0],
          [1000, 0],
        ],
      ),
    ).toBe(400);
    expect(
      offLine(
        [300, 400, 9],
        [
          [0, 0],
          [0, 0],
        ],
      ),
    ).toBe(500);
  });
});

const PALETTE: Palette = {
  ground: parse("#ffffff"),
  line: parse("#ccc"),
  text: parse("#000"),
  wood: parse("#ead9b8"),
  sawn: parse("#d8b98a"),
  slope: parse("#9fb4bd"),
  edge: parse("#3a3227"),
  chosen: parse("#a33a08"),
  wrong: parse("#98110f"),
  good: parse("#1e5b2e"),
};
const member = (mark: string, layer: string, neighbours: string[], at: number): SceneMember => ({
  mark,
  layer,
  triangles: { first: at * 6, count: 6 },
  arrises: { first: at * 4, count: 4 },
  label: [0, 0, 0],
  neighbours,
});
const MEMBERS = [
  member("J1", "rafters", ["P1"], 0),
  member("P1", "plates", ["J1"], 1),
  member("C1", "inside", [], 2),
];
const LOOK: Look = {
  timber: null,
  wall: null,
  layers: new Set(["rafters", "plates", "inside"]),
  slopes: true,
  marks: false,
  progress: false,
};
const tints = (look: Look, done: Record<string, "no" | "cut" | "fixed"> = {}) =>
  MEMBERS.map((each, k) => {
    const stage = { done: done[each.mark] ?? "no", changed: false } as const;
    return tint(each, k, stage, keptMarks(MEMBERS, look.timber), look, PALETTE);
  });
const presences = (all: { presence: string }[]) => all.map((each) => each.presence);

describe("the look of timbers", () => {
  test("a chosen timber and its neighbours stay, the others fade", () => {
    expect(presences(tints({ ...LOOK, timber: "J1" }))).toEqual(["solid", "solid", "faded"]);
    const [chosen, neighbour] = tints({ ...LOOK, timber: "J1" });
    expect(chosen!.face).not.toBe(neighbour!.face);
  });

  test("a hidden layer hides, but never what is chosen", () => {
    const look = { ...LOOK, layers: new Set(["plates"]) };
    expect(presences(tints(look))).toEqual(["hidden", "solid", "hidden"]);
    expect(presences(tints({ ...look, timber: "J1" }))).toEqual(["solid", "solid", "hidden"]);
  });

  test("progress is told by what can be seen through, too", () => {
    const all = tints({ ...LOOK, progress: true }, { P1: "cut", C1: "fixed" });
    expect(presences(all)).toEqual(["faded", "solid", "solid"]);
    expect(all[1]!.face).not.toBe(all[2]!.face);
  });

  test("colours and numbers are written to the runs and nowhere else", () => {
    const words = new Uint32Array(18);
    paint(words, MEMBERS[1]!.triangles, 7);
    expect([...words]).toEqual([
      ...Array<number>(6).fill(0),
      ...Array<number>(6).fill(7),
      ...Array<number>(6).fill(0),
    ]);
    const pairs = new Uint32Array(6);
    paintPairs(pairs, MEMBERS[1]!.arrises, 9);
    expect([...pairs]).toEqual([0, 0, 9, 9, 0, 0]);
    const index = new Uint32Array(18);
    const n = gather(index, MEMBERS, tints({ ...LOOK, timber: "J1" }), "faded");
    expect([...index.subarray(0, n)]).toEqual([12, 13, 14, 15, 16, 17]);
  });

  test("a colour is four bytes, red first", () => {
    expect([...new Uint8Array(new Uint32Array([word(parse("#102030"), 0.5)]).buffer)]).toEqual([
      16, 32, 48, 128,
    ]);
    expect(parse("no colour")).toEqual([0, 0, 0]);
    expect(mix([0, 0, 0], [200, 100, 50], 0.5)).toEqual([100, 50, 25]);
  });
});

test("marks that would cover each other give way, in the order in which they ask", () => {
  const crowd = new Crowd();
  const mark = (x: number, y: number) => ({ x, y, width: 40, height: 20 });
  expect(
    [mark(100, 100), mark(130, 110), mark(141, 100), mark(100, 121)].map((each) => crowd.admit(each)),
  ).toEqual([true, false, true, true]);
});

test("the camera stands where the sight says", () => {
  const from = sight.fit(CORNERS, ROUND, 1);
  const camera = new PerspectiveCamera();
  see(from, camera, 100, 100, SCENE);
  const place = new Matrix4().copy(camera.matrixWorld).elements.slice(12, 15);
  sight.eye(from).forEach((value, k) => expect(place[k]).toBeCloseTo(value, 6));
});
