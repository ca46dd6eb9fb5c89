/**
 * Knows the house a file belongs to: the nearest `quern.json`, the foods of its folders from there down to the file, and the settings of the editor below both.
 * Refuses to know which texts are open.
 */
import type { House } from '../checks/house.ts';
import { bookIn, builtInBook, type HouseFoodProblem, withHouseFoods } from '../food/book.ts';
import type { HouseFood } from '../food/food.ts';
import { parseDocument } from '../notation/document.ts';
import { type Outline, outline } from '../notation/outline.ts';
import { type Around, basesOver } from './bases.ts';
import { liesIn } from './folders.ts';
import { houseFoodsOf } from './house-foods.ts';
import { MOST_BESIDE } from './limits.ts';
import { isPicture } from './picture-files.ts';
import type { Bases, Files } from './ports.ts';
import { faultWords } from './read-fault.ts';
import { DEFAULTS, parseSettings, type Settings } from './settings.ts';

/** A house with what could not be used of it. */
export interface HouseRead {
  readonly house: House;
  readonly settings: Settings;
  readonly problems: readonly string[];
  readonly foodProblems: readonly HouseFoodProblem[];
}

/** Foods nearer to a recipe are laid over those further out: `layers` has the outermost first; `own` of them are of the file alone. */
export function makeHouse(
  settings: Settings,
  layers: readonly (readonly HouseFood[])[] = [],
  own: readonly HouseFood[] = [],
): HouseRead {
  const { language } = settings;
  let book = language === undefined ? builtInBook() : bookIn(language);
  const foodProblems: HouseFoodProblem[] = [];
  for (const foods of layers) {
    const laid = withHouseFoods(book, foods);
    book = laid.book;
    foodProblems.push(...laid.problems);
  }
  const house: House = {
    world: {
      book,
      measures: settings.measures,
      bands: settings.bands,
      ovens: settings.ovens,
      ...(language && { language }),
    },
    severities: settings.severities,
    foodSafety: settings.foodSafety,
    ...(own.length > 0 && { ownFoods: own.map(({ name }) => name) }),
  };
  return {
    house,
    settings,
    problems: foodProblems.map((p) => `food ${p.food}: ${p.words}`),
    foodProblems,
  };
}

/** Houses by folder, each read once until told to forget. */
export class Houses {
  private readonly byFolder = new Map<string, HouseRead>();
  /** Of each folder the last house, with what it was made of: made of the same again, it is the same object. */
  private readonly lastMade = new Map<string, { readonly of: string; readonly house: HouseRead }>();
  private readonly keys = new Map<string, string>();
  private readonly settingsBy = new Map<string, Settings>();
  private readonly foodsByPath = new Map<string, readonly HouseFood[]>();
  private readonly outlineByPath = new Map<string, Outline>();
  private readonly larderByFolder = new Map<string, Larder | undefined>();
  private readonly files: Files;
  private readonly editor: Settings;
  private readonly tell: (problem: string) => void;
  private homeless: HouseRead | undefined;
  /** The files that recipes build on, read as the houses are. */
  readonly bases: Bases;

  private readonly roots = new Set<string>();
  /** The recipes of a house, or around a file that lives in none, by folder. */
  private readonly atHand = new Map<string, readonly string[]>();

  /** `tell` hears of each house that is read what could not be used. */
  constructor(
    files: Files,
    editor: Settings = DEFAULTS,
    { tell = () => undefined, ...around }: Partial<Around> & { readonly tell?: (problem: string) => void } = {},
  ) {
    this.files = files;
    this.editor = editor;
    this.tell = tell;
    this.bases = basesOver(files, {
      roots: () => [...this.roots],
      atHand: (from) => this.recipesAround(from),
      ...around,
    });
  }

  /** A folder that somebody named: recipes in it that live in no house may build on each other. */
  opened(folder: string): void {
    this.roots.add(folder);
  }

  /**
   * The house of a file; one without `quern.json` above it, or on no disk, lives under the editor's settings alone. `text`: what the file holds,
   * where that is known.
   */
  of(path: string | undefined, text?: string): HouseRead {
    const folder = path === undefined ? undefined : this.files.houseAbove(path);
    const larders = this.lardersOver(path, folder, text);
    const nearest = larders.at(-1)?.key ?? folder;
    if (nearest === undefined) {
      this.homeless ??= makeHouse(this.editor);
      return this.homeless;
    }
    let house = this.byFolder.get(nearest);
    if (house === undefined) {
      house = this.read(folder, nearest, larders);
      this.byFolder.set(nearest, house);
    }
    return house;
  }

  /** All that a file's house is made of, as a text: of the same text the same house is made. */
  keyOf(path: string, text?: string): string {
    const folder = this.files.houseAbove(path);
    const larders = this.lardersOver(path, folder, text);
    const nearest = larders.at(-1)?.key ?? folder ?? '';
    let key = this.keys.get(nearest);
    if (key === undefined) {
      key = this.partsOf(folder, larders).of;
      this.keys.set(nearest, key);
    }
    return key;
  }

  /** The settings of a file, of which no house is made for this. */
  settingsOf(path: string): Settings {
    const folder = this.files.houseAbove(path);
    if (folder === undefined) return this.editor;
    let settings = this.settingsBy.get(folder);
    if (settings === undefined) {
      const text = this.files.read(this.files.join(folder, 'quern.json'));
      const read = text === undefined ? undefined : parseSettings(text, this.editor);
      settings = read?.settings ?? this.editor;
      this.settingsBy.set(folder, settings);
      for (const problem of read?.problems ?? []) this.tell(problem);
    }
    return settings;
  }

  /** The files whose foods hold for a file, the nearest last. */
  foodFiles(path: string): readonly string[] {
    return this.lardersOver(path, this.files.houseAbove(path)).flatMap(({ files }) => files);
  }

  /** The same as outlines, without the file itself; those are the same objects until one changes. */
  foodOutlines(path: string): readonly Outline[] {
    return this.foodFiles(path)
      .filter((file) => file !== path)
      .flatMap((file) => {
        const known = this.outlineByPath.get(file);
        const text = known === undefined ? this.files.read(file) : undefined;
        const read = known ?? (text === undefined ? undefined : outline(parseDocument(text)));
        if (read === undefined) return [];
        this.outlineByPath.set(file, read);
        return [read];
      });
  }

  /** A file changed, came or went. Where a house may be made of it, houses are made anew, and it answers true; the foods of other files are kept. */
  forget(path: string): boolean {
    if (isPicture(path)) {
      this.bases.forgetPictures?.();
      return false;
    }
    this.outlineByPath.delete(path);
    if (!path.endsWith('quern.json')) {
      const before = this.foodsByPath.get(path) ?? [];
      const now = this.foodsIn(path);
      this.foodsByPath.set(path, now);
      // Even without a food in it, a house may begin with it.
      if (before.length === 0 && now.length === 0 && folderOfFoods(path) === undefined) return false;
    }
    this.byFolder.clear();
    this.keys.clear();
    this.settingsBy.clear();
    this.larderByFolder.clear();
    this.atHand.clear();
    return true;
  }

  private recipesAround(from: string): readonly string[] {
    const house = this.files.houseAbove(from);
    const folder = house ?? this.files.beside(from, '.');
    let paths = this.atHand.get(folder);
    if (paths === undefined) {
      paths = this.files.recipesBelow(folder, house === undefined ? MOST_BESIDE : undefined);
      this.atHand.set(folder, paths);
    }
    return paths;
  }

  private read(folder: string | undefined, nearest: string, larders: readonly Larder[]): HouseRead {
    const { of, text, faults, layers } = this.partsOf(folder, larders);
    const last = this.lastMade.get(nearest);
    if (last?.of === of) return last.house;
    const { settings, problems } =
      text === undefined ? { settings: this.editor, problems: [] } : parseSettings(text, this.editor);
    const made = makeHouse(settings, layers, larders.at(-1)?.own);
    const house = { ...made, problems: [...faults, ...problems, ...made.problems] };
    this.lastMade.set(nearest, { of, house });
    for (const problem of house.problems) this.tell(problem);
    return house;
  }

  private partsOf(folder: string | undefined, larders: readonly Larder[]) {
    const path = folder === undefined ? undefined : this.files.join(folder, 'quern.json');
    const text = path === undefined ? undefined : this.files.read(path);
    const faults = [
      ...[...(path === undefined ? [] : [path]), ...larders.flatMap(({ files }) => files)].flatMap(
        (each) => this.unread(each) ?? [],
      ),
      ...larders.flatMap((larder) => larder.faults),
      ...(folder !== undefined && this.files.holdsMore?.(folder) === true
        ? [
            `${folder} holds more files than are looked at, so not all of it may be known: put quern.json nearer to the recipes`,
          ]
        : []),
    ];
    const layers = larders.map(({ files, own }) => own ?? files.flatMap((path) => this.foodsByPath.get(path) ?? []));
    const isOwn = larders.at(-1)?.own !== undefined;
    return { of: JSON.stringify([folder, isOwn, text ?? this.editor, faults, layers]), text, faults, layers };
  }

  /**
   * What holds foods for a path, the outermost first: the `foods.quern` of each folder from the house down to it, the files that `quern.json`
   * names, and what the file describes itself. Nothing else of the house is read.
   */
  private lardersOver(path: string | undefined, root: string | undefined, text?: string): readonly Larder[] {
    if (path === undefined) return [];
    const larders =
      root === undefined
        ? []
        : foldersBetween(root, path, this.files).flatMap((folder) => this.larderIn(folder, root) ?? []);
    if (!path.endsWith('.quern') || larders.some(({ files }) => files.includes(path))) return larders;
    const own = text === undefined ? this.foodsAt(path) : foodsSaidIn(text);
    if (own.length === 0) return larders;
    return [...larders, { key: `${path}\n${JSON.stringify(own)}`, files: [path], faults: [], own }];
  }

  private larderIn(folder: string, root: string): Larder | undefined {
    if (this.larderByFolder.has(folder)) return this.larderByFolder.get(folder);
    const path = this.files.join(folder, 'foods.quern');
    const named = folder === root ? this.namedFiles(root) : [];
    const faults = named.flatMap(({ fault }) => fault ?? []);
    const files = [path, ...named.flatMap(({ path: each }) => each ?? [])].filter(
      (each) => this.foodsAt(each).length > 0 || this.unread(each) !== undefined,
    );
    const larder = files.length + faults.length === 0 ? undefined : { key: folder, files: [...new Set(files)], faults };
    this.larderByFolder.set(folder, larder);
    return larder;
  }

  /** The files that the house's `quern.json` names for their foods, or why one cannot be taken. */
  private namedFiles(root: string): readonly { readonly path?: string; readonly fault?: string }[] {
    const house = this.files.join(root, 'quern.json');
    return this.settingsOf(house).foods.map((name) => {
      const path = this.files.beside(house, name);
      if (!liesIn(path, root)) return { fault: `\`foods\` names ${name}, which lies outside the house` };
      const isThere = this.files.read(path) !== undefined || this.unread(path) !== undefined;
      return isThere ? { path } : { fault: `\`foods\` names ${name}, which is not there` };
    });
  }

  /** Why a file of the house that is there could not be read. */
  private unread(path: string): string | undefined {
    const fault = this.files.faultOf?.(path);
    if (fault === undefined || (fault.kind === 'encoding' && fault.encoding.isRead)) return undefined;
    return `${/[^\\/]*$/.exec(path)?.[0]} ${faultWords(fault)}`;
  }

  private foodsAt(path: string): readonly HouseFood[] {
    let foods = this.foodsByPath.get(path);
    if (foods === undefined) {
      foods = this.foodsIn(path);
      this.foodsByPath.set(path, foods);
    }
    return foods;
  }

  private foodsIn(path: string): readonly HouseFood[] {
    const text = this.files.read(path);
    return text === undefined ? [] : foodsSaidIn(text);
  }
}

const foodsSaidIn = (text: string): readonly HouseFood[] =>
  /^[ \t]*food[ \t]/m.test(text) ? houseFoodsOf(outline(parseDocument(text))) : [];

/** Foods that hold for what lies in a folder, or for one file alone. */
interface Larder {
  /** The folder, or the file. */
  readonly key: string;
  readonly files: readonly string[];
  readonly faults: readonly string[];
  /** Those of the file itself, which nobody names. */
  readonly own?: readonly HouseFood[];
}

/** The folders from the house's down to that of the path. */
function foldersBetween(root: string, path: string, files: Files): readonly string[] {
  const names = path
    .slice(root.length)
    .split(/[\\/]+/)
    .filter((name) => name !== '');
  const folders = [root];
  for (const name of path.endsWith('.quern') || path.endsWith('quern.json') ? names.slice(0, -1) : names)
    folders.push(files.join(folders.at(-1) ?? root, name));
  return folders;
}

const folderOfFoods = (path: string): string | undefined => /^(.*[^\\/])[\\/]+foods\.quern$/.exec(path)?.[1];
