/**
 * What every reduction is: a pure function of its input, a prediction, a method note, and the tests it serves.
 * Pages, the command, the API and the handbook know reductions only through the registry.
 */
import type * as z from 'zod';
import type { Airplane } from '../airplane/index.ts';
import type { Recording } from '../logs/index.ts';
import type { Flag, Refusal } from '../remarks/index.ts';
import type { Alignment, Result } from '../results/index.ts';
import type { SegmentEdit } from '../segments/index.ts';

export interface ReductionInput {
  /** aligned logs; absent when only written points are given */
  recording?: Recording;
  /** POINTS.json, already parsed by the reduction's `points` schema when it comes through `parsePoints` */
  points?: unknown;
  airplane?: Airplane;
  configurationRevision?: number;
  /** segments set by hand; when given they replace the found ones */
  segments?: SegmentEdit[];
  /** an accepted airspeed result, as its JSON */
  calibration?: Result;
  /** the reduction's own options, parsed by its `options` schema */
  options?: Record<string, unknown>;
  alignment?: Alignment[];
}

/** A predicted reading with its prediction interval (95 %, for the next run), SI. */
export interface PredictedQuantity {
  name: string;
  unit: string;
  value: number | null;
  low: number | null;
  high: number | null;
  conditions: Record<string, unknown>;
  why: string;
}

export interface Prediction {
  kind: string;
  status: 'predicted' | 'refused';
  reason?: string;
  quantities: PredictedQuantity[];
  tables: Result['tables'];
  flags: Result['flags'];
}

export interface MethodNote {
  /** newest first; the first one's version is stamped on results */
  versions: readonly { version: string; change: string }[];
  /** what it does, in plain sentences */
  summary: readonly string[];
  formulas: readonly { says: string; formula: string; source: string }[];
  assumptions: readonly string[];
  workedExample: { title: string; lines: readonly string[] };
  sources: readonly string[];
}

export interface Reduction {
  kind: string;
  title: string;
  /** one line: the question it answers */
  answers: string;
  /** catalogue test ids it serves */
  serves: readonly string[];
  /** quantities it cannot do without when reducing logs, and those it uses if there */
  needs: readonly string[];
  uses: readonly string[];
  /** true where an accepted airspeed calibration changes its numbers */
  usesCalibration?: boolean;
  /** roles a segment may have */
  roles: readonly { role: string; meaning: string }[];
  pointsSchema: z.ZodType;
  optionsSchema: z.ZodType;
  /** Never throws on data: refuses with a reason. A schema mismatch of points or options throws InputProblem. */
  reduce(input: ReductionInput): Result;
  conditionsSchema?: z.ZodType;
  predict?(result: Result, conditions: unknown): Prediction;
  note: MethodNote;
}

/**
 * What every result carries, whatever was found: its kind, how the logs were aligned, and where it came from.
 * @param kind name as in the command, text
 * @param note the method's note; its newest version is stamped
 * @param input what was reduced
 * @returns the part of a result that does not depend on the data
 */
export function resultShell(
  kind: string,
  note: MethodNote,
  input: ReductionInput,
): Pick<Result, 'kind' | 'alignment' | 'provenance'> {
  return {
    kind,
    ...(input.alignment ? { alignment: input.alignment } : {}),
    provenance: {
      files: (input.recording?.tables ?? []).map((table) => ({ name: table.file, sha256: table.sha256 })),
      configurationRevision: input.configurationRevision ?? null,
      methodVersion: note.versions[0]?.version ?? '',
    },
  };
}

/**
 * A refusal in the shape of a result.
 * @param shell what the result carries all the same
 * @param why the refusal
 * @param flags what was left out before it came to this, list
 * @returns the result, without a value
 */
export function refusedResult(shell: ReturnType<typeof resultShell>, why: Refusal, flags: Flag[] = []): Result {
  return {
    ...shell,
    status: 'refused',
    reason: why.message,
    code: why.code,
    mend: why.mend,
    quantities: [],
    tables: [],
    segments: [],
    comparisons: [],
    flags,
  };
}
