import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'vitest';
import { open } from '../../support/harness.ts';
import { ovenTimes } from '../../../server/src/recipe/baking/oven-time.ts';
test('dump', () => {
  let n = 0, meet = 0, mid = 0, dec = 0;
  for (const f of readdirSync('tests/outside/heat/cases')) {
    const text = readFileSync(`tests/outside/heat/cases/${f}`, 'utf8');
    const [, lo = 0, hi = 0] = (/published ([\d.]+) to ([\d.]+)/.exec(text) ?? []).map(Number);
    const r = open(text).recipe!;
    const all = ovenTimes(r);
    const t = all.at(-1);
    n++;
    if (t === undefined || t.is === 'declined') { dec++; console.log(f.padEnd(24), 'DECLINED', t?.why, t?.bake.body?.members.map((m)=>m.state.cut+'/'+m.state.cooked+'/'+r.parts[m.of.part]?.head.ingredients[m.of.ingredient]?.food?.class).join(' ')); continue; }
    const { likely, low, high } = t.estimate; const m = Math.sqrt(lo * hi);
    if (low <= hi && high >= lo) meet++; if (m >= low && m <= high) mid++;
    console.log(f.padEnd(24), t.load.kind.name.padEnd(12), likely.toFixed(1), `(${low.toFixed(0)}-${high.toFixed(0)})`, 'pub', lo, hi, 'ratio', (m / likely).toFixed(2), 'kg', t.load.massKg.toFixed(2), 'depth', (100 * t.estimate.depth).toFixed(1), 'to', t.load.targetC.toFixed(0), 'w', t.load.makeup.water.toFixed(2));
  }
  console.log(n, 'meet', meet, 'mid', mid, 'declined', dec);
});
