/**
 * Prints how each measure spreads over the published formulas of a kind, beside its band: `npm run formulas [-- KIND …]`, all kinds without one.
 * By the other hand's figures where the table has them, else by the middle of ours; names of the table will do too.
 */
import './tables-as-text.ts';

const { FORMULAS, isMeasure, recipeOf, workedOf } = await import('../../tests/outside/formula/published-formulas.ts');
const { kindNamed } = await import('../src/recipe/measures/kinds.ts');
const { open } = await import('../../tests/support/harness.ts');

const asked = process.argv.slice(2);
const kinds = [...new Set(FORMULAS.map((f) => f.as))].filter(
  (as) => asked.length === 0 || asked.includes(as) || FORMULAS.some((f) => f.as === as && asked.includes(f.kind)),
);

for (const as of kinds) {
  const kind = kindNamed(as);
  const formulas = FORMULAS.filter((f) => f.as === as && !f.suspect);
  const opened = formulas.map((formula) => ({ formula, snapshot: kind && open(recipeOf(formula)) }));
  const names = new Set([
    ...(kind?.measures.map((m) => m.measure) ?? []),
    ...formulas.flatMap((f) => f.derived.map((d) => d.name)),
  ]);
  console.log(`${as}: ${formulas.length} formulas${kind === undefined ? ' (no kind of ours)' : ''}`);
  for (const name of names) {
    const values = opened
      .flatMap(({ formula, snapshot }) => {
        const told = formula.derived.find((d) => d.name === name)?.value;
        // What a print leaves out, water `to mix`, makes ours nonsense.
        const isTold = formulas.some((f) => f.derived.some((d) => d.name === name));
        const value = told ?? (isTold || snapshot === undefined ? undefined : middle(snapshot, name));
        return value === undefined ? [] : [{ id: formula.id, value }];
      })
      .sort((a, b) => a.value - b.value);
    const band = kind?.measures.find((m) => m.measure === name);
    const at = (share: number) => text(values[Math.round(share * (values.length - 1))]?.value);
    const outside = band === undefined ? [] : values.filter(({ value }) => isOutside(value, band.usual));
    console.log(
      [
        `  ${name}`.padEnd(26),
        `n ${String(values.length).padStart(2)}  `,
        ...[0, 0.25, 0.5, 0.75, 1].map((share) => at(share).padStart(8)),
        band === undefined ? '' : `   usual ${edges(band.usual)}, implausible ${edges(band.implausible)}`,
        outside.length === 0 ? '' : `; outside: ${outside.map((o) => `${o.id} ${text(o.value)}`).join(', ')}`,
      ].join(''),
    );
  }
}

function middle(snapshot: ReturnType<typeof open>, name: string): number | undefined {
  const worked = isMeasure(name) ? workedOf(snapshot, name) : undefined;
  return worked?.known === true ? (worked.value.low + worked.value.high) / 2 : undefined;
}

function isOutside(value: number, [low, high]: readonly [number | null, number | null]): boolean {
  return (low !== null && value < low) || (high !== null && value > high);
}

function edges([low, high]: readonly [number | null, number | null]): string {
  return `${low ?? ''}–${high ?? ''}`;
}

function text(value: number | undefined): string {
  return value === undefined ? '-' : String(Number(value.toPrecision(3)));
}
