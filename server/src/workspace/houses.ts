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

/** Foods nearer to a recipe are laid over those further out: `layers` has the outermost first. */
export function makeHouse(settings: Settings, layers: readonly (readonly HouseFood[])[] = []): HouseRead {
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
  private readonly larderByRoot = new Map<string, readonly Larder[]>();
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

  /** The house of a file; one without `quern.json` above it, or on no disk, lives under the editor's settings alone. */
  of(path: string | undefined): HouseRead {
    const folder = path === undefined ? undefined : this.files.houseAbove(path);
    if (folder === undefined) {
      this.homeless ??= makeHouse(this.editor);
      return this.homeless;
    }
    const larders = this.lardersOver(path, folder);
    const nearest = larders.at(-1)?.folder ?? folder;
    let house = this.byFolder.get(nearest);
    if (house === undefined) {
      house = this.read(folder, nearest, larders);
      this.byFolder.set(nearest, house);
    }
    return house;
  }

  /** All that a file's house is made of, as a text: of the same text the same house is made. */
  keyOf(path: string): string {
    const folder = this.files.houseAbove(path);
    if (folder === undefined) return JSON.stringify(this.editor);
    const larders = this.lardersOver(path, folder);
    const nearest = larders.at(-1)?.folder ?? folder;
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
    const folder = this.files.houseAbove(path);
    return folder === undefined ? [] : this.lardersOver(path, folder).flatMap(({ files }) => files);
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
    this.larderByRoot.clear();
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

  private read(folder: string, nearest: string, larders: readonly Larder[]): HouseRead {
    const { of, text, faults, layers } = this.partsOf(folder, larders);
    const last = this.lastMade.get(nearest);
    if (last?.of === of) return last.house;
    const { settings, problems } =
      text === undefined ? { settings: this.editor, problems: [] } : parseSettings(text, this.editor);
    const made = makeHouse(settings, layers);
    const house = { ...made, problems: [...faults, ...problems, ...made.problems] };
    this.lastMade.set(nearest, { of, house });
    for (const problem of house.problems) this.tell(problem);
    return house;
  }

  private partsOf(folder: string, larders: readonly Larder[]) {
    const path = this.files.join(folder, 'quern.json');
    const text = this.files.read(path);
    const faults = this.faultsOf(folder, [path, ...larders.flatMap(({ files }) => files)]);
    const layers = larders.map(({ files }) => files.flatMap((path) => this.foodsByPath.get(path) ?? []));
    return { of: JSON.stringify([folder, text, faults, layers]), text, faults, layers };
  }

  /** What of the house itself could not be read. */
  private faultsOf(folder: string, paths: readonly string[]): readonly string[] {
    return [
      ...paths.flatMap((path) => this.unread(path) ?? []),
      ...(this.files.holdsMore?.(folder) === true
        ? [
            `${folder} holds more files than are looked at, so not every food of the house may be known: put quern.json nearer to the recipes`,
          ]
        : []),
    ];
  }

  /** The larders of a house that hold for a path, the outermost first. */
  private lardersOver(path: string | undefined, root: string): readonly Larder[] {
    let larders = this.larderByRoot.get(root);
    if (larders === undefined) {
      larders = this.lardersIn(root);
      this.larderByRoot.set(root, larders);
    }
    return path === undefined ? [] : larders.filter(({ folder }) => folder === root || isWithin(path, folder));
  }

  /** Every folder of the house that has a `foods.quern`, and its root, with the files whose foods are theirs; those further out first. */
  private lardersIn(root: string): readonly Larder[] {
    const files = this.files
      .recipesBelow(root)
      .filter(
        (path) =>
          this.foodsAt(path).length > 0 || (folderOfFoods(path) !== undefined && this.unread(path) !== undefined),
      );
    // A house within the house keeps its foods.
    const own = files.filter((path) => this.files.houseAbove(path) === root);
    const byFolder = new Map<string, string[]>([[root, []]]);
    for (const path of own) {
      const folder = folderOfFoods(path);
      if (folder !== undefined && !byFolder.has(folder)) byFolder.set(folder, []);
    }
    for (const path of own) {
      let folder = path;
      while (folder !== '' && !byFolder.has(folder)) folder = folder.replace(LAST_NAME, '');
      byFolder.get(folder === '' ? root : folder)?.push(path);
    }
    return [...byFolder]
      .map(([folder, files]) => ({ folder, files }))
      .sort((a, b) => a.folder.length - b.folder.length);
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
    return text !== undefined && /^[ \t]*food[ \t]/m.test(text) ? houseFoodsOf(outline(parseDocument(text))) : [];
  }
}

/** A folder with foods of its own: they hold for what lies in it. */
interface Larder {
  readonly folder: string;
  readonly files: readonly string[];
}

/** The last name of a path, with what stands before it. */
const LAST_NAME = /(?:^|[\\/]+)[^\\/]*[\\/]*$/;

const folderOfFoods = (path: string): string | undefined => /^(.*[^\\/])[\\/]+foods\.quern$/.exec(path)?.[1];

const isWithin = (path: string, folder: string): boolean =>
  path === folder || (path.startsWith(folder) && (/[\\/]$/.test(folder) || /[\\/]/.test(path.charAt(folder.length))));
