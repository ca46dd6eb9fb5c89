/** Stands before what the tests say where it arrives among all else that the editor says. */
export const testMark = 'quern-test: ';

/** A test in the extension host: it passes unless it throws. */
export type EditorTest = { readonly name: string; readonly run: () => Promise<void> };

/** Runs the tests in their order, prints one line for each and a closing line, and rejects when one failed. */
export async function runAll(all: readonly EditorTest[], longestMs: number): Promise<void> {
  const only = process.env.QUERN_ONLY;
  const tests = all.filter(({ name }) => only === undefined || name.includes(only));
  let failed = 0;
  for (const test of tests) {
    const startedAt = Date.now();
    try {
      await within(longestMs, test.run());
      say(`  ok    ${test.name} (${Date.now() - startedAt} ms)`);
    } catch (error) {
      failed += 1;
      say(`  FAIL  ${test.name}\n${error instanceof Error ? error.stack : String(error)}`);
    }
  }
  say(`${tests.length - failed} passed, ${failed} failed`);
  if (failed > 0) throw new Error(`${failed} of ${tests.length} editor tests failed`);
}

export function say(text: string): void {
  console.log(process.env.QUERN_MARKED === undefined ? text : `${testMark}${text}`);
}

/** Asks until the answer is one; rejects with the question's name when there is none in time. */
export async function waitFor<Value>(
  what: string,
  ask: () => Value | undefined | Promise<Value | undefined>,
  longestMs = 15_000,
): Promise<Value> {
  const giveUpAt = Date.now() + longestMs;
  while (Date.now() < giveUpAt) {
    const answer = await ask();
    if (answer !== undefined) return answer;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`Waited in vain for ${what}.`);
}

async function within(longestMs: number, running: Promise<void>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`It took longer than ${longestMs} ms.`)), longestMs);
  });
  await Promise.race([running, late]).finally(() => clearTimeout(timer));
}
