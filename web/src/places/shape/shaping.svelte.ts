// What this place shows and what is chosen in it. The job itself is the session's.

import { SvelteSet } from "svelte/reactivity";
import type { MemberRow, Nudge, Overview, RidgeRow, WallRow } from "../../core/bindings";
import type { Session } from "../../state/session";
import { t, type Word } from "../../words";
import { Asked } from "./strength/asked.svelte";
import type { Way } from "./view/travel";
import type { Look } from "./view/tints";
import type { RoofView } from "./view/roof-view";
import type { Touched } from "./view/touch";
import type { Marked } from "./view/labels";
import { record } from "./view/timing";

export type Panel = "timbers" | "walls" | "show" | "entries" | "strength" | "notices";

export type Chosen =
  { is: "timber"; mark: string } | { is: "wall"; wall: string } | { is: "ridge"; id: string };

/** The layers of the core, in the order of the switches. */
export const LAYERS = ["rafters", "ridges", "plates", "inside", "edges"] as const;

const NO_TAGS: ReadonlyMap<string, string> = new Map();

export class Shaping {
  /** The panel that is open, unless something is chosen. */
  panel = $state<Panel | null>(null);
  chosen = $state.raw<Chosen | null>(null);
  readonly layers = new SvelteSet<string>(LAYERS);
  slopes = $state(true);
  marks = $state(false);
  sizes = $state(false);
  progress = $state(false);
  /** A pitch that is set is for the whole roof, not only for the wall that is chosen. */
  pitchAll = $state(false);
  way = $state<Way>("round");
  /** The next touch says where to stand. */
  placing = $state(false);
  /** No 3-D drawing just now. */
  lost = $state(false);
  /** Spoken by screen readers when it changes. */
  said = $state("");
  view = $state.raw<RoofView | null>(null);
  #nudge: Nudge | null = null;
  /** The last change of a drag that could be built, and whether the one after it could not. */
  #shown: Nudge | null = null;
  #beyond = false;
  /** Rises with every drag that ends, so that a late answer is not taken for the next. */
  #drag = 0;
  #frame = 0;

  /** The strength of the roof, as it was asked for last. */
  readonly strength: Asked;

  constructor(readonly session: Session) {
    this.strength = new Asked(session);
  }

  /** The roof as it is, or as it would be while a finger drags. */
  get overview(): Overview | null {
    return this.session.nudged?.overview ?? this.session.standing?.overview ?? null;
  }

  readonly look: Look = $derived({
    timber: this.chosen?.is === "timber" ? this.chosen.mark : null,
    wall: this.chosen?.is === "wall" ? this.chosen.wall : null,
    layers: new Set(this.layers),
    slopes: this.slopes,
    marks: this.marks,
    progress: this.progress,
  });

  /** The wall that a pitch is set for; none for the whole roof. */
  get pitchWall(): string | null {
    return this.pitchAll || this.chosen?.is !== "wall" ? null : this.chosen.wall;
  }

  /** What is written at the timbers. */
  readonly marked: Marked[] = $derived.by(() => {
    const overview = this.overview;
    if (!overview) return [];
    const chosen = this.chosen?.is === "timber" ? this.chosen.mark : null;
    const over = this.panel === "strength" ? this.strength.tags : NO_TAGS;
    const marked = overview.scene.members.flatMap((member, k): Marked[] => {
      const row = overview.members[k];
      const tag = over.get(member.mark);
      const shown = this.layers.has(member.layer) && (this.marks || this.progress || tag !== undefined);
      if (!row || (member.mark !== chosen && !shown)) return [];
      if (tag !== undefined) {
        const text = `${member.mark}: ${tag}`;
        return [{ member, text, kind: member.mark === chosen ? "chosen" : "over" }];
      }
      const far = row.changed ? "changed" : row.done;
      const told = this.progress && far !== "no" ? `${member.mark}: ${t(`shape.done.${far}`)}` : member.mark;
      const text = member.mark === chosen || this.marks || far !== "no" ? told : "";
      if (text === "") return [];
      return [{ member, text, kind: member.mark === chosen ? "chosen" : row.changed ? "changed" : "plain" }];
    });
    // The most used first: where there is no room for all, these are written.
    const order = new Map([...over.keys()].map((mark, n) => [mark, n]));
    const place = (of: Marked) => order.get(of.member.mark) ?? order.size;
    return order.size > 0 ? marked.sort((a, b) => place(a) - place(b)) : marked;
  });

  get timber(): MemberRow | null {
    const chosen = this.chosen;
    if (chosen?.is !== "timber") return null;
    return this.overview?.members.find((row) => row.mark === chosen.mark) ?? null;
  }

  get wall(): WallRow | null {
    const chosen = this.chosen;
    if (chosen?.is !== "wall") return null;
    return this.overview?.walls.find((row) => row.wall === chosen.wall) ?? null;
  }

  get ridge(): RidgeRow | null {
    const chosen = this.chosen;
    if (chosen?.is !== "ridge") return null;
    return this.overview?.ridges.find((row) => row.id === chosen.id) ?? null;
  }

  choose(chosen: Chosen | null): void {
    this.chosen = chosen;
    if (!chosen) this.said = t("shape.nothing_chosen");
    else if (chosen.is === "timber") this.said = this.timber?.spoken ?? "";
    else if (chosen.is === "wall")
      this.said = `${t("shape.wall", { wall: chosen.wall })}, ${this.wall?.form ?? ""}`;
    else this.said = `${t("shape.ridge_height")} ${this.ridge?.height ?? ""}`;
  }

  /** Opens a panel; a second press puts it away. */
  open(panel: Panel): void {
    this.panel = this.panel === panel && !this.chosen ? null : panel;
    this.chosen = null;
  }

  touched(what: Touched): void {
    if (this.placing) {
      this.#standAt(what);
    } else if (what.is === "timber") this.choose({ is: "timber", mark: what.mark });
    else if (what.is === "wall") this.choose({ is: "wall", wall: what.wall });
    else if (this.chosen) this.choose(null);
  }

  go(way: Exclude<Way, "stand">): void {
    this.placing = false;
    this.view?.travel.go(way);
    this.way = way;
    this.#say(way);
  }

  /** Looks down on the plan and waits for a touch. */
  askWhere(): void {
    if (this.way !== "above") this.view?.travel.go("above");
    this.way = "above";
    this.placing = true;
    this.said = t("shape.stand_where");
  }

  whole(): void {
    this.placing = false;
    this.view?.travel.whole();
    this.way = this.view?.travel.way ?? this.way;
  }

  /** Shows a change while a finger drags: no more than one a frame. */
  nudge(nudge: Nudge): void {
    this.#nudge = nudge;
    if (this.#frame === 0) this.#frame = requestAnimationFrame(() => void this.#send());
  }

  /** Keeps what was dragged to; when the finger went on to what can't be built, the roof that is shown. */
  async keep(nudge: Nudge): Promise<void> {
    const asked = this.#beyond ? (this.#shown ?? nudge) : nudge;
    this.#endDrag();
    const kept = await this.session.edit(asked);
    if (!kept) this.session.letGo();
    else if (this.chosen) this.choose(this.chosen);
  }

  letGo(): void {
    this.#endDrag();
    this.session.letGo();
  }

  #endDrag(): void {
    this.#drag += 1;
    this.#nudge = null;
    this.#shown = null;
    this.#beyond = false;
  }

  /** One change is on its way at a time; when it is shown, the newest that the finger asked for follows. */
  async #send(): Promise<void> {
    while (this.#nudge) {
      const nudge = this.#nudge;
      this.#nudge = null;
      const [before, drag] = [this.session.nudged, this.#drag];
      const start = performance.now();
      await this.session.nudge(nudge);
      record("seatcut:solve", start);
      if (drag !== this.#drag) continue;
      this.#beyond = this.session.nudged === before;
      if (!this.#beyond) this.#shown = nudge;
    }
    this.#frame = 0;
  }

  #standAt(what: Touched): void {
    if (what.is === "nothing" || !what.level) return;
    this.placing = false;
    this.view?.travel.stand(what.level[0], what.level[1]);
    this.way = "stand";
    this.#say("stand");
  }

  #say(way: Way): void {
    this.said = t(`shape.said.${way}` satisfies Word);
  }
}
