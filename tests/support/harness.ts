/**
 * One helper a kind of test, so that an interface can change without touching the tests.
 */
import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import type { Check } from '../../server/src/checks/check.ts';
import { type Finding, fixesOf } from '../../server/src/checks/finding.ts';
import type { House } from '../../server/src/checks/house.ts';
import { CHECKS } from '../../server/src/checks/index.ts';
import { nodeFiles } from '../../server/src/host/files.ts';
import { parseDocument } from '../../server/src/notation/document.ts';
import { outline } from '../../server/src/notation/outline.ts';
import { houseFoodsOf } from '../../server/src/workspace/house-foods.ts';
import { Houses, makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS, type Settings } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { compareMarks, type MarkedFinding, readMarks } from './marks.ts';

const HOUSE = makeHouse(DEFAULTS).house;
const disk = nodeFiles();
/** Beside a text that lies in no folder there are some pictures. */
const PICTURES = ['rubbed.png', 'slab.jpg'];
const HOUSES = new Houses({
  ...disk,
  namesIn: (folder) => (folder === resolve('.') ? PICTURES : (disk.namesIn?.(folder) ?? [])),
});
const KITCHEN = HOUSES.of(resolve('examples')).house;

/** Every recipe of the example kitchen: path and text. */
export const EXAMPLES: readonly (readonly [string, string])[] = nodeFiles()
  .recipesBelow(resolve('examples'))
  .map((path) => [relative('examples', path), readFileSync(path, 'utf8')]);

/** A text worked out under the default house, or other settings. A check that throws fails the test. */
export function open(text: string, settings?: Partial<Settings>): Snapshot {
  const own = /^\s*food\s/m.test(text) ? houseFoodsOf(outline(parseDocument(text))) : [];
  if (settings === undefined && own.length === 0) return openIn(text, HOUSE);
  return openIn(text, makeHouse({ ...DEFAULTS, ...settings }, [own], own).house);
}

/** The same under the house of the example kitchen. */
export const openInKitchen = (text: string, file = 'test.quern'): Snapshot =>
  openIn(text, KITCHEN, resolve('examples', file));

function openIn(text: string, house: House, path = 'test.quern'): Snapshot {
  const snapshot = Snapshot.open(path, 1, text, house, HOUSES.bases);
  const [bug] = snapshot.bugs;
  if (bug !== undefined) throw bug.error;
  return snapshot;
}

const ONLY = new Map<string, Partial<Settings>>();

/** Settings under which one check runs alone. */
export function onlyCheck(code: string): Partial<Settings> {
  let settings = ONLY.get(code);
  if (settings === undefined) {
    settings = {
      severities: Object.fromEntries(CHECKS.filter((c) => c.code !== code).map((c) => [c.code, 'off' as const])),
    };
    ONLY.set(code, settings);
  }
  return settings;
}

/** The differences between a fixture's marks and what is found in it, with all checks or one. */
export function checkFixture(fixture: string, check?: Check): string[] {
  const { text, marks } = readMarks(fixture);
  const snapshot = open(text, check === undefined ? undefined : onlyCheck(check.code));
  return compareMarks(
    marks,
    snapshot.findings.open.map((f) => marked(f, snapshot)),
  );
}

function marked(finding: Finding, snapshot: Snapshot): MarkedFinding {
  return {
    code: finding.code,
    severity: finding.severity,
    ...finding.at,
    message: finding.said.message,
    fixes: fixesOf(finding, snapshot).map((f) => f.title),
    usual: finding.check.severity,
  };
}
