// Where in the steps the job that is open was left, so that a look at the lifts does not lose the place.

let jobId: string | null = null;
let step = $state(0);
let turn = $state(0);

/** The step that is shown, from 0, and how far one has walked round the roof. */
export const left = {
  get step(): number {
    return step;
  },
  set step(to: number) {
    step = to;
  },
  get turn(): number {
    return turn;
  },
  walk(): void {
    turn = (turn + 1) % 4;
  },
  /** Another job begins at its first step. */
  open(job: string | null): void {
    if (job !== jobId) [jobId, step, turn] = [job, 0, 0];
  },
};
