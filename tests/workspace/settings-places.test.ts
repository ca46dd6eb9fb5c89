import { describe, expect, it } from 'vitest';
import { placedFaults } from '../../server/src/workspace/settings-places.ts';

/** `line:words under the mark`, lines from 1. */
const marked = (text: string): string[] =>
  placedFaults(text).map(({ start, end }) => {
    const line = text.split(/\r?\n/)[start.line] ?? '';
    return `${start.line + 1}:${line.slice(start.character, start.line === end.line ? end.character : undefined)}`;
  });

describe('mistakes of quern.json stand where they are', () => {
  it.each([
    ['{\n  "measures": "buckets"\n}', ['2:"buckets"']],
    ['{\r\n  "colour": 3,\r\n  "foodSafety": "none"\r\n}', ['2:"colour"', '3:"none"']],
    ['{ "severities": { "no-such": "off", "unused-part": "loud" } }', ['1:"no-such"', '1:"loud"']],
    ['{ "severities": { "undercooked": "off", "raw-egg": "warning" } }', ['1:"off"']],
    [
      '{ "bands": {\n "gruel": {},\n "shortcrust": {\n  "hydration": [5, 1], "colour": [0, 1] } } }',
      ['2:"gruel"', '4:[5, 1]', '4:"colour"'],
    ],
    ['{ "ovens": [] }', ['1:[]']],
    [
      '{ "ovens": { "deck": { "fan": 1, "offset": -8 },\n "top": true,\n "low": { "offset": 90, "steam": true } } }',
      ['1:1', '2:true', '3:90', '3:"steam"'],
    ],
    ['{ "ovens": { "lower deck": { "fan": true, "offset": -8 }, "old one": {} } }', []],
    ['{ "ignore": "drafts" }', ['1:"drafts"']],
    ['[\n1]', ['1:[']],
    ['{ "measures" "us" }', ['1:"us"']],
    ['{ "measures": "us", }', ['1:}']],
    ['{}', []],
    ['{ "measures": "metric" }', []],
  ])('%j', (text, expected) => {
    expect(marked(text)).toEqual(expected);
  });

  it('are said with what to write instead', () => {
    expect(placedFaults('{ "measures": "buckets" }')[0]?.words).toBe(
      '`measures` is one of "us", "metric", "british", "australian", "canadian", "imperial"',
    );
    expect(placedFaults('{ "measures" "us" }')[0]?.words).toMatch(/no JSON here: colon expected/);
    expect(placedFaults('{ "severities": { "raw-egg": "off" } }')[0]?.words).toBe(
      '`raw-egg` is about safety and is never off: accept it in the recipe, with `allow raw-egg because …`',
    );
  });

  it('break nothing whatever is typed', () => {
    const text = '{ "severities": { "unused-part": "off" }, "bands": { "shortcrust": { "hydration": [0.2, null] } } }';
    for (let n = 0; n <= text.length; n++) expect(() => placedFaults(text.slice(0, n))).not.toThrow();
    for (const odd of ['', 'null', '"x"', '\u0000', '{"severities":null,"bands":[]}'])
      expect(marked(odd).length).toBeGreaterThan(0);
  });
});
