/** Why a file was not written; nothing of it is left behind, and the file that was there stays as it was. */
export interface WriteProblem {
  readonly kind: 'not written';
  readonly file: string;
  /** The system's short name of the failure, such as `EACCES`. */
  readonly code: string;
}
