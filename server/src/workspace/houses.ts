/**
 * Knows the house a file belongs to: the nearest `quern.json`, the foods of its folder, and the settings of the editor below both.
 * Refuses to know which texts are open.
 */
import type { House } from '../checks/house.ts';
import { builtInBook, withHouseFoods } from '../food/book.ts';
import type { HouseFood } from '../food/food.ts';
import { parseDocument } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import { basesOver } from './bases.ts';
import { houseFoodsOf } from './house-foods.ts';
import type { Bases, Files } from './ports.ts';
import { DEFAULTS, parseSettings, type Settings } from './settings.ts';

/** A house with what could not be used of it. */
export interface HouseRead {
  readonly house: House;
  readonly settings: Settings;
  readonly problems: readonly string[];
  readonly foodProblems: readonly { readonly food: string; readonly words: string }[];
}

export function makeHouse(settings: Settings, foods: readonly HouseFood[] = []): HouseRead {
  const laid = foods.length === 0 ? { book: builtInBook(), problems: [] } : withHouseFoods(builtInBook(), foods);
  const house: House = {
    world: { book: laid.book, measures: settings.measures, bands: settings.bands },
    severities: settings.severities,
    foodSafety: settings.foodSafety,
  };
  return {
    house,
    settings,
    problems: laid.problems.map((p) => `food ${p.food}: ${p.words}`),
    foodProblems: laid.problems,
  };
}

/** Houses by folder, each read once until told to forget. */
export class Houses {
  private readonly byFolder = new Map<string, HouseRead>();
  private readonly foodsByPath = new Map<string, readonly HouseFood[]>();
  private readonly files: Files;
  private readonly editor: Settings;
  private homeless: HouseRead | undefined;
  /** The files that recipes build on, read as the houses are. */
  readonly bases: Bases;

  constructor(files: Files, editor: Settings = DEFAULTS) {
    this.files = files;
    this.editor = editor;
    this.bases = basesOver(files);
  }

  /** The house of a file; one without `quern.json` above it, or on no disk, lives under the editor's settings alone. */
  of(path: string | undefined): HouseRead {
    const folder = path === undefined ? undefined : this.files.houseAbove(path);
    if (folder === undefined) {
      this.homeless ??= makeHouse(this.editor);
      return this.homeless;
    }
    let house = this.byFolder.get(folder);
    if (house === undefined) {
      house = this.read(folder);
      this.byFolder.set(folder, house);
    }
    return house;
  }

  /** A file changed. Where a house is made of it, the house is forgotten; the foods of other files are kept. */
  forget(path: string): void {
    if (!path.endsWith('quern.json')) {
      const before = this.foodsByPath.get(path) ?? [];
      const now = this.foodsIn(path);
      this.foodsByPath.set(path, now);
      if (before.length === 0 && now.length === 0) return;
    }
    this.byFolder.clear();
  }

  private read(folder: string): HouseRead {
    const text = this.files.read(this.files.join(folder, 'quern.json'));
    const { settings, problems } =
      text === undefined ? { settings: this.editor, problems: [] } : parseSettings(text, this.editor);
    const made = makeHouse(settings, this.foodsBelow(folder));
    return { ...made, problems: [...problems, ...made.problems] };
  }

  private foodsBelow(folder: string): HouseFood[] {
    return this.files.recipesBelow(folder).flatMap((path) => {
      let foods = this.foodsByPath.get(path);
      if (foods === undefined) {
        foods = this.foodsIn(path);
        this.foodsByPath.set(path, foods);
      }
      return foods;
    });
  }

  private foodsIn(path: string): readonly HouseFood[] {
    const text = this.files.read(path);
    return text !== undefined && /^[ \t]*food[ \t]/m.test(text) ? houseFoodsOf(outline(parseDocument(text))) : [];
  }
}
