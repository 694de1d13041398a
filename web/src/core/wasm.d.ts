// The modules of the core, as scripts/web.sh builds them. Where they are built, their own declarations hold.

declare module "*/wasm/web_core.js" {
  export class Core {
    call(name: string, takes: string): string;
    /** The points of the scene that the last call made; once. */
    takeScene(): Points | undefined;
    free(): void;
  }
  export class Points {
    takeTimbers(): Float32Array;
    takeArrises(): Float32Array;
    takeSlopes(): Float32Array;
    free(): void;
  }
  export default function init(from: { module_or_path: unknown }): Promise<unknown>;
}

declare module "*/wasm/web_side.js" {
  export class Side {
    call(name: string, takes: string): string;
    /** All that is worked out from the open job, for the module that makes its papers. */
    forPapers(): string;
    free(): void;
  }
  export default function init(from: { module_or_path: unknown }): Promise<unknown>;
}

declare module "*/wasm/web_papers.js" {
  export function paper(solution: string, what: string): Uint8Array;
  export default function init(from: { module_or_path: unknown }): Promise<unknown>;
}
