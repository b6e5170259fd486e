import {
  type FaceOfLayout,
  type FaceTable,
  type Focus,
  type ForRack,
  type Job,
  type LayOutSteps,
  type LayoutAnswer,
  type LumberWanted,
  type OpenThread,
  type Steps,
  type TallyRow,
  type YardAnswer,
  completer,
  faceTable,
  layOutJob,
  layoutAnswer,
  leastMoney,
  ownedSuffice,
  solver,
  tallySteps,
  yardAnswer,
} from '../../index.ts';

// What a command asks that may take long, as plain data: so that it can be asked of another thread.

/** How a job is solved. */
interface Solving {
  readonly job: Job;
  readonly seed: number;
  readonly effort: number;
}

/** A long question. */
export type Question =
  | (Solving & { readonly kind: 'layout'; readonly rack: ForRack; readonly face: FaceOfLayout | null })
  | (Solving & { readonly kind: 'faces'; readonly rack: ForRack; readonly focus: Focus })
  | (Solving & { readonly kind: 'yard'; readonly yard: Job['boards']; readonly runnerUps: number })
  | { readonly kind: 'owned'; readonly wanted: readonly LumberWanted[]; readonly seed: number }
  | { readonly kind: 'tally'; readonly job: Job; readonly yard: Job['boards'] };

/** What is answered to each kind of question. */
export interface Answers {
  readonly layout: LayoutAnswer;
  readonly faces: FaceTable;
  /** Null where it was ended before any choice was found. */
  readonly yard: YardAnswer | null;
  /** For each lumber whether what is owned suffices. */
  readonly owned: readonly boolean[];
  readonly tally: readonly TallyRow[];
}

/** The answer to a question of this type. */
export type AnswerTo<Q extends Question> = Answers[Q['kind']];

/** What a question is worked at with. */
export interface Reins {
  /** Turns true once when the work should end. */
  readonly stop: () => boolean;
  readonly thread: OpenThread;
}

/** The work at a question, in steps. */
export function stepsOf<Q extends Question>(question: Q, reins: Reins): Steps<AnswerTo<Q>> {
  return stepsOfAny(question, reins) as Steps<AnswerTo<Q>>;
}

function stepsOfAny(question: Question, reins: Reins): Steps<Answers[keyof Answers]> {
  switch (question.kind) {
    case 'layout':
      return layoutAnswer(
        question.job,
        question.face,
        layOutSteps(question, reins, question.face?.kind !== 'within premium'),
        reins.stop,
      );
    case 'faces':
      return faceTable(question.job, question.focus, layOutSteps(question, reins), reins.stop);
    case 'yard': {
      const { job, yard, runnerUps, seed, effort } = question;
      const cheapest = solver({ seed, effort, ...reins });
      const solvers = { cheapest, comesOut: completer(seed), least: leastMoney(seed), stop: reins.stop };
      return yardAnswer(job, yard, runnerUps, solvers);
    }
    case 'owned':
      return ownedSuffice(question.wanted, completer(question.seed));
    case 'tally':
      return tallySteps(question.job, question.yard, reins.stop);
  }
}

/** One solve, of a layout as of each face to choose from, so that their costs can be compared. */
function layOutSteps(
  { seed, effort, rack }: Extract<Question, { rack: ForRack }>,
  reins: Reins,
  asksWhatToAdd = false,
): LayOutSteps {
  return (job) => layOutJob(job, { seed, effort, ...reins }, rack, asksWhatToAdd);
}
