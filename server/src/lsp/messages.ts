// Knows the private messages between Quern's client and server: their names and the shape of what they carry.
// It refuses to know how either side makes or shows them, and imports nothing, so that both sides can read it.

/** A place in a text: lines and characters from 0, characters in UTF-16 units, as in the Language Server Protocol. */
export type MessagePosition = { readonly line: number; readonly character: number };
export type MessageRange = { readonly start: MessagePosition; readonly end: MessagePosition };
export type MessageEdit = { readonly range: MessageRange; readonly newText: string };

/** A notification's name, and what it carries. */
export type PrivateNotification<Params> = { readonly method: string; readonly carries?: Params };

/** A request's name, what is asked and what is answered. */
export type PrivateRequest<Params, Answer> = {
  readonly method: string;
  readonly carries?: Params;
  readonly answers?: Answer;
};

/** The version every payload states; a side that reads another version leaves the message alone. */
export const messageVersion = 1;
export type MessageVersion = typeof messageVersion;

/** Asks for a sign of life: whatever is answered is one. */
export const aliveRequest: PrivateRequest<object, null> = { method: 'quern/alive' };

/** Files of a folder that only the client can look at; also in `initializationOptions.handed`, for those that are there at the start. */
export type HandedParams = {
  /** What came or changed: a recipe or `quern.json` with its text, or why it has none; a picture by its name. */
  readonly files: readonly HandedFile[];
  /** Files and folders that went, as URIs. */
  readonly gone: readonly string[];
  /** Folders that hold more than was looked at, as URIs. */
  readonly larger: readonly string[];
};

export type HandedFile = {
  readonly uri: string;
  readonly text?: string;
  /** It is there, and its bytes are not UTF-8; or why it cannot be read, which stands after `cannot be read: `. */
  readonly fault?: { readonly encoding: true } | { readonly why: string };
};

export const handedNotification: PrivateNotification<HandedParams> = { method: 'quern/handed' };

export type StatusParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  /** The version of the text that these numbers were worked out from. */
  readonly documentVersion: number;
  readonly findings: FindingCounts;
  /** Grams of all that the recipe lists, null where no amount is known; with `isLeast` some of it is not. */
  readonly massG: { readonly low: number; readonly high: number; readonly isLeast?: true } | null;
  /** The yield as written, '12 squares', null where the recipe states none. */
  readonly yield: string | null;
  /** What the kitchen's record says, null for a file that is no recipe; a server before 0.2 does not say. */
  readonly record?: TrialRecord | null;
};

export type TrialRecord = {
  readonly state: 'never cooked' | 'cooked, changed since' | 'cooked as written';
  readonly trials: number;
  /** The date of the latest, '2026-09-14', null where there is none. */
  readonly latest: string | null;
};

export type FindingCounts = {
  readonly error: number;
  readonly warning: number;
  readonly info: number;
  readonly hint: number;
};

export type ScaleParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  /** The wish in words: 'by 1.5', 'to 12 slices', 'half', 'double'. */
  readonly to: string;
};

export type ScaleAnswer =
  | {
      readonly version: MessageVersion;
      readonly ok: true;
      readonly edits: readonly MessageEdit[];
      /** One line for each change: 'flour 240 g → 480 g'. */
      readonly changes: readonly string[];
      /** What does not scale by itself: pans, times, leavening. */
      readonly said: readonly string[];
      /** Of a recipe that builds on another file, all of it scaled, as a recipe of its own; there are no edits then. */
      readonly inFull?: string;
    }
  | { readonly version: MessageVersion; readonly ok: false; readonly why: string };

export type RecordTrialParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  /** Today where the cook is: '2026-09-14'. */
  readonly date: string;
};

export type RecordTrialAnswer =
  | {
      readonly version: MessageVersion;
      readonly ok: true;
      readonly edits: readonly MessageEdit[];
      /** The first value to overwrite, in the text after the edits. */
      readonly first: MessageRange;
    }
  | { readonly version: MessageVersion; readonly ok: false; readonly why: string };

export type DiffParams = {
  readonly version: MessageVersion;
  /** The file both texts are versions of: its house and the bases beside it are theirs. */
  readonly uri: string;
  readonly a: string;
  readonly b: string;
  /** Of the first, where it is another recipe. */
  readonly uriOfA?: string;
};

/** What a cook would do otherwise by `b` than by `a`, one change a line; null where Quern could not tell. */
export type DiffAnswer = { readonly version: MessageVersion; readonly same: boolean; readonly words: string } | null;

export type TrialsParams = { readonly version: MessageVersion; readonly uri: string };

export type TrialsAnswer = {
  readonly version: MessageVersion;
  /** Oldest first. */
  readonly trials: readonly {
    readonly date: string;
    readonly by: string | null;
    readonly verdict: string | null;
    /** Lines whose amount, time or temperature is not as the trial tested it, null where it carries no fingerprint. */
    readonly changedLines: number | null;
    readonly asWritten: boolean;
    /** The marks of what it tested, null where it carries no fingerprint. */
    readonly tested: readonly string[] | null;
  }[];
};

export type AsTestedParams = {
  readonly version: MessageVersion;
  /** The file all texts are versions of. */
  readonly uri: string;
  /** The marks of a trial. */
  readonly tested: readonly string[];
  readonly texts: readonly string[];
};

/** The first of the texts that is, fact for fact, what the trial tested; null where none is. */
export type AsTestedAnswer = { readonly version: MessageVersion; readonly at: number | null };

export type CheckFolderParams = {
  readonly version: MessageVersion;
  /** How far it is is told by the protocol's own progress under this token. */
  readonly workDoneToken?: string | number;
};

export type CheckFolderAnswer = {
  readonly version: MessageVersion;
  /** False when it was cancelled: what was found until then stays listed. */
  readonly finished: boolean;
  readonly files: number;
  readonly withFindings: number;
  readonly findings: FindingCounts;
};

export type ExplainParams = {
  readonly version: MessageVersion;
  readonly code: string;
  /** The recipe on which the page shows its arithmetic. */
  readonly uri?: string;
};

/** The page of a finding's code, null where there is no such code. */
export type ExplainAnswer = {
  readonly version: MessageVersion;
  readonly title: string;
  readonly markdown: string;
} | null;

export type PlanParams = {
  readonly version: MessageVersion;
  /** Of the recipes that are eaten together, open ones. */
  readonly uris: readonly string[];
  /** The time of the day: '19:30'. */
  readonly serve: string;
};

/** The day planned backwards as a page. */
export type PlanAnswer =
  | { readonly version: MessageVersion; readonly ok: true; readonly title: string; readonly html: string }
  | { readonly version: MessageVersion; readonly ok: false; readonly why: string };

export type ReadParams = {
  readonly version: MessageVersion;
  /** The file that the text is for, open or not: it is read in its house. */
  readonly uri: string;
  /** What was copied. */
  readonly text: string;
};

/** A printed recipe in the notation, null for a text that is none. */
export type ReadAnswer = {
  readonly version: MessageVersion;
  readonly text: string;
  /** Lines that were not understood, which stand in the text as comments. */
  readonly missed: number;
} | null;

/** What of a recipe is looked at otherwise than it is written: servings, measures, degrees, a measure that is turned. */
export type PageLook = Readonly<Record<string, unknown>>;

export type PageParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  /** One of the six: `recipe`, `formula`, `made-of`, `day`, `label`, `trials`. */
  readonly view: string;
  readonly look: PageLook;
  /** Why nothing may be written, in one sentence; absent where it may. */
  readonly readOnly?: string;
  /** Whether somebody types: what takes long is then as it was, and is asked for again once nobody does. */
  readonly hasty?: boolean;
  /** Whether the style sheet is wanted as well. */
  readonly style?: boolean;
};

/** One view of the recipe within its frame; null for a text that is not open. */
export type PageAnswer = {
  readonly version: MessageVersion;
  /** The version of the text that is shown. */
  readonly documentVersion: number;
  readonly title: string;
  /** What stands in the body of the page. */
  readonly html: string;
  readonly style?: string;
} | null;

export type PageActParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  readonly look: PageLook;
  readonly act: string;
  /** As the page carries it, and what a field holds: both are looked at before they are used. */
  readonly arg?: unknown;
  readonly value?: unknown;
};

/** What an act comes to: a change of the text, something else to look at, or why there is neither. */
export type PageActAnswer =
  | {
      readonly version: MessageVersion;
      readonly ok: true;
      /** The version of the text that the edits are for. */
      readonly documentVersion: number;
      readonly edits?: readonly MessageEdit[];
      readonly look?: PageLook;
      /** What was done, for whoever does not see it. */
      readonly said?: string;
    }
  | { readonly version: MessageVersion; readonly ok: false; readonly why: string };

/** Server to client, whenever an open recipe's numbers change. */
export const statusNotification: PrivateNotification<StatusParams> = { method: 'quern/status' };

/** Client to server: what scaling the whole file would change. It changes nothing by itself. */
export const scaleRequest: PrivateRequest<ScaleParams, ScaleAnswer> = { method: 'quern/scale' };

/** Client to server: how a trial of today is started in the text. It changes nothing by itself. */
export const recordTrialRequest: PrivateRequest<RecordTrialParams, RecordTrialAnswer> = {
  method: 'quern/recordTrial',
};

/** Client to server: two texts of one recipe told apart. */
export const diffRequest: PrivateRequest<DiffParams, DiffAnswer> = { method: 'quern/diff' };

/** Client to server: the trials of an open recipe. */
export const trialsRequest: PrivateRequest<TrialsParams, TrialsAnswer> = { method: 'quern/trials' };

/** Client to server: which of several texts of a recipe a trial tested. */
export const asTestedRequest: PrivateRequest<AsTestedParams, AsTestedAnswer> = { method: 'quern/asTested' };

/** Client to server: work out the findings of every file at hand, and push them. */
export const checkFolderRequest: PrivateRequest<CheckFolderParams, CheckFolderAnswer> = { method: 'quern/checkFolder' };

/** Client to server: the page of one code. */
export const explainRequest: PrivateRequest<ExplainParams, ExplainAnswer> = { method: 'quern/explain' };

/** Client to server: a printed recipe that was copied, in the notation. It changes nothing by itself. */
export const readRequest: PrivateRequest<ReadParams, ReadAnswer> = { method: 'quern/read' };

/** Client to server: the day planned backwards for open recipes. */
export const planRequest: PrivateRequest<PlanParams, PlanAnswer> = { method: 'quern/plan' };

/** Client to server: one view of an open recipe, as a page. */
export const pageRequest: PrivateRequest<PageParams, PageAnswer> = { method: 'quern/page' };

/** Client to server: what a button or field of the page comes to. It changes nothing by itself. */
export const pageActRequest: PrivateRequest<PageActParams, PageActAnswer> = { method: 'quern/page/act' };

export type PublishParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  /** `html`, `markdown`, `text` or `json-ld`. */
  readonly format: string;
  readonly measures?: 'weight-first' | 'measure-first';
  /** Only of a recipe that was cooked as it is written. */
  readonly proved?: boolean;
};

export type ReportParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  /** `text`, `json` or `html`. */
  readonly format: string;
};

export type WeighParams = {
  readonly version: MessageVersion;
  /** The file in whose house it is weighed, open or not. */
  readonly uri: string;
  /** `1 1/2 cup plain flour` */
  readonly words: string;
};

export type ChangeParams = {
  readonly version: MessageVersion;
  readonly uri: string;
  /** What is to be done, as the terminal has it: `convert`, `adjust`. */
  readonly verb: string;
  /** What that takes. */
  readonly arg: object;
};

export type MeasuresParams = { readonly version: MessageVersion; readonly uri: string };

/** The measures of each part that may be brought to another value. */
export type MeasuresAnswer = {
  readonly version: MessageVersion;
  readonly parts: readonly {
    /** '' of a recipe of one nameless part. */
    readonly part: string;
    readonly measures: readonly {
      /** `hydration` */
      readonly measure: string;
      /** `water per flour` */
      readonly says: string;
      /** `62 %` */
      readonly now: string;
      readonly usual: string;
      readonly outside: boolean;
    }[];
  }[];
};

/** A text that the terminal would print. */
export type DocumentAnswer =
  | {
      readonly version: MessageVersion;
      readonly ok: true;
      readonly text: string;
      /** What is to be known beside it. */
      readonly said: readonly string[];
    }
  | { readonly version: MessageVersion; readonly ok: false; readonly why: string };

/** Client to server: the page for readers. */
export const publishRequest: PrivateRequest<PublishParams, DocumentAnswer> = { method: 'quern/publish' };

/** Client to server: the recipe worked out. */
export const reportRequest: PrivateRequest<ReportParams, DocumentAnswer> = { method: 'quern/report' };

/** Client to server: an amount of a food in grams, and why. */
export const weighRequest: PrivateRequest<WeighParams, DocumentAnswer> = { method: 'quern/weigh' };

/** Client to server: what a verb would change. It changes nothing by itself. */
export const changeRequest: PrivateRequest<ChangeParams, ScaleAnswer> = { method: 'quern/change' };

/** Client to server: what can be adjusted. */
export const measuresRequest: PrivateRequest<MeasuresParams, MeasuresAnswer> = { method: 'quern/measures' };

export type KitchenParams = { readonly version: MessageVersion };

/** Every recipe of the folders that are open, by name. */
export type KitchenAnswer = {
  readonly version: MessageVersion;
  readonly recipes: readonly KitchenRecipe[];
};

export type KitchenRecipe = {
  readonly uri: string;
  readonly name: string;
  /** The line that opens it, from 0. */
  readonly line: number;
  readonly tags: readonly string[];
  readonly state: TrialRecord['state'];
  readonly trials: number;
  readonly latest: string | null;
  /** What it builds on: a recipe, or a part of one; `of` is what that recipe is called. */
  readonly uses: readonly { readonly uri: string; readonly part: string | null; readonly of: string }[];
};

/** Client to server: the recipes of the folders. */
export const kitchenRequest: PrivateRequest<KitchenParams, KitchenAnswer> = { method: 'quern/kitchen' };

export type BeginParams = { readonly version: MessageVersion };

/** The files that a folder of recipes begins with, named from that folder on. */
export type BeginAnswer = {
  readonly version: MessageVersion;
  readonly files: readonly { readonly name: string; readonly text: string }[];
};

/** Client to server: with which files a folder is begun. Nothing is written by itself. */
export const beginRequest: PrivateRequest<BeginParams, BeginAnswer> = { method: 'quern/begin' };
