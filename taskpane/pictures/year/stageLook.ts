import type { Attributes } from "../svg";
import { tones } from "../tones";
import type { StageRun } from "./drawnYear";

/** How the area of a stage looks; more stages than tones are told apart by how dark they are, and all by their names. */
export const stageLook = (stage: string, runs: readonly Pick<StageRun, "stage">[]): Attributes => {
  const kind = [...new Set(runs.map((run) => run.stage))].indexOf(stage);
  return {
    fill: tones[kind % tones.length] as string,
    "fill-opacity": kind < tones.length ? 0.3 : 0.1,
    stroke: "currentColor",
    "stroke-opacity": 0.5,
    "data-part": "stage",
  };
};
