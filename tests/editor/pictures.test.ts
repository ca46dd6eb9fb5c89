import { describe, expect, it } from 'vitest';
import { fileLinks } from '../../server/src/editor/file-links.ts';
import { mendLinks } from '../../server/src/editor/moved-files.ts';
import { writeInFull } from '../../server/src/workspace/write-in-full.ts';
import { kitchenOf } from '../support/kitchen.ts';

const TART = `recipe Tart
  picture pictures/tart.jpg
  200 g     plain flour
  do Bake it.
  picture baked.png$0
`;
const BESIDE = { 'baked.png': '', 'baked-dark.png': '', 'notes.txt': '', 'pictures/tart.jpg': '' };

describe('a picture in the editor', () => {
  it('is a link where it is there', () => {
    const { snapshot } = kitchenOf({ 'tart.quern': TART, ...BESIDE });
    expect(fileLinks(snapshot).map(({ file, path }) => [file, path])).toEqual([
      ['pictures/tart.jpg', '/k/pictures/tart.jpg'],
      ['baked.png', '/k/baked.png'],
    ]);
    expect(fileLinks(kitchenOf({ 'tart.quern': TART }).snapshot)).toEqual([]);
  });

  it('is shown in the hover with the words of its step', () => {
    const said = kitchenOf({ 'tart.quern': TART, ...BESIDE }).hover();
    expect(said).toContain('baked.png · the step above');
    expect(said).toContain('/k/baked.png: Bake it.');
    expect(kitchenOf({ 'tart.quern': TART }).hover()).toBeUndefined();
  });

  it('is offered by name, with the folders that may hold more', () => {
    const typed = TART.replace('baked.png$0', '$0');
    expect(kitchenOf({ 'tart.quern': typed, ...BESIDE }).offered()).toEqual([
      'baked-dark.png',
      'baked.png',
      'pictures/',
    ]);
    const inside = TART.replace('baked.png$0', 'pictures/t$0');
    const kitchen = kitchenOf({ 'tart.quern': inside, ...BESIDE });
    expect(kitchen.offered()).toEqual(['pictures/tart.jpg']);
    expect(kitchen.completed('pictures/tart.jpg')).toBe('  picture pictures/tart.jpg');
  });

  it('is neither found nor listed outside the house', () => {
    const outside = kitchenOf({ 'tart.quern': TART.replace('baked.png$0', '../secret.png$0') });
    expect(outside.snapshot.picture('../secret.png')).toEqual({ kind: 'outside' });
    expect(outside.snapshot.pictureNames('../')).toEqual([]);
  });

  it('goes along when it is moved, and when its recipe is', () => {
    const { kitchen } = kitchenOf({ 'tart.quern': TART, ...BESIDE });
    const picture = mendLinks([{ from: '/k/baked.png', to: '/k/pictures/done.png' }], kitchen.index);
    expect(picture.get('/k/tart.quern')?.map(({ text }) => text)).toEqual(['pictures/done.png']);
    const recipe = mendLinks([{ from: '/k/tart.quern', to: '/k/old/tart.quern' }], kitchen.index);
    expect(recipe.get('/k/tart.quern')?.map(({ text }) => text)).toEqual(['../pictures/tart.jpg', '../baked.png']);
  });
});

describe('a variant', () => {
  const BASE = 'recipe Base\n  picture base.jpg\n  200 g     plain flour\n  do Bake it.\n  picture baked.png\n';
  const files = { 'pastry/base.quern': BASE, 'pastry/baked.png': '' };

  it('shows the steps of its base, and not the dish that it is not', () => {
    const { snapshot } = kitchenOf({
      'tart.quern': 'recipe Tart$0\n  from    pastry/base.quern\n  add 10 g  salt\n',
      ...files,
    });
    const lines = snapshot.whole.document.lines.map(({ text }) => text.trim());
    expect(lines).toContain('picture pastry/baked.png');
    expect(lines.join('\n')).not.toContain('base.jpg');
    expect(snapshot.picture('pastry/baked.png')).toEqual({ kind: 'there', path: '/k/pastry/baked.png' });
    expect(
      writeInFull(snapshot)
        ?.map(({ text }) => text)
        .join('\n'),
    ).toContain('picture pastry/baked.png');
  });

  it('is told of its own pictures alone', () => {
    const { snapshot } = kitchenOf({
      'tart.quern': 'recipe Tart$0\n  picture tart.jpg\n  from    pastry/base.quern\n  add 10 g  salt\n',
      'pastry/base.quern': BASE,
    });
    const missing = snapshot.findings.open.filter(({ code }) => code === 'picture-missing');
    expect(missing.map(({ at }) => at.line)).toEqual([1]);
  });

  it('takes other steps with their pictures instead', () => {
    const { snapshot } = kitchenOf({
      'tart.quern': 'recipe Tart$0\n  from    pastry/base.quern\n\n  do Fry it.\n  picture fried.png\n',
      ...files,
    });
    const lines = snapshot.whole.document.lines.map(({ text }) => text.trim()).filter((text) => text !== '');
    expect(lines.slice(-2)).toEqual(['do Fry it.', 'picture fried.png']);
    expect(lines.join('\n')).not.toContain('baked.png');
  });
});
