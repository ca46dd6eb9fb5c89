/**
 * The built command as a web server over a real socket: what it answers, whom, and all that it refuses; and a recipe that is changed while it
 * is looked at.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'parse5';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { NODE, ROOT } from '../support/fake-editor.ts';

const SLAB = `recipe Oat slab
  yield   8 bars
  picture pictures/slab.png, Cut when cold

part base
  200 g     rolled oats
  80 g      butter, soft
  60 g      sugar

  do Rub 50 g of the butter into the oats and sugar.
  do Bake at 180 C for 20 min until golden.
  do Brush with the rest of the butter and cool for 30 min.
`;
// 8 bytes that open every PNG; what follows does not matter here.
const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

const top = mkdtempSync(join(tmpdir(), 'quern-serve-'));
const kitchen = join(top, 'kitchen');
let serving: ChildProcess;
let port = 0;

beforeAll(async () => {
  mkdirSync(join(kitchen, 'bakes', 'pictures'), { recursive: true });
  writeFileSync(join(kitchen, 'quern.json'), '{}');
  writeFileSync(join(kitchen, 'bakes', 'slab.quern'), SLAB);
  writeFileSync(join(kitchen, 'bakes', 'Crème & <b>.quern'), SLAB.replace('Oat slab', 'Crème & <b>slab</b>'));
  writeFileSync(join(kitchen, 'bakes', 'pictures', 'slab.png'), PNG);
  writeFileSync(join(kitchen, 'bakes', 'pictures', 'other.png'), PNG);
  writeFileSync(join(kitchen, 'secret.txt'), 'secret');
  writeFileSync(join(top, 'outside.quern'), 'recipe Outside\n');
  writeFileSync(join(top, 'outside.png'), PNG);
  symlinkSync(join(top, 'outside.png'), join(kitchen, 'bakes', 'pictures', 'linked.png'));
  writeFileSync(join(kitchen, 'bakes', 'linked.quern'), SLAB.replace('slab.png', 'linked.png'));
  serving = spawn(NODE, [`${ROOT}dist/cli.js`, 'serve', kitchen], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  serving.stdout?.setEncoding('utf8');
  for await (const chunk of serving.stdout ?? []) {
    said += chunk;
    if (said.includes('Ctrl+C')) break;
  }
  port = Number(/^http:\/\/127\.0\.0\.1:(\d+)\/\n/.exec(said)?.[1]);
  expect(port).toBeGreaterThan(0);
});

afterAll(() => {
  serving.kill('SIGKILL');
  rmSync(top, { recursive: true });
});

interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** A path as it is written, which no client may tidy first. */
const ask = (
  path: string,
  options: { readonly method?: string; readonly headers?: Record<string, string> } = {},
): Promise<Answered> =>
  new Promise((answered, failed) => {
    const asking = request({ host: '127.0.0.1', port, path, agent: false, ...options }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        answered({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(chunks).toString('utf8'),
        }),
      );
    });
    asking.on('error', failed);
    asking.end();
  });

describe('what is answered', () => {
  test('the list, by folder, with what was found, as well-formed HTML under a strict policy', async () => {
    const { status, headers, body } = await ask('/');
    expect(status).toBe(200);
    expect(headers['content-security-policy']).toBe(
      "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    );
    expect(headers).toMatchObject({
      'content-type': 'text/html; charset=utf-8',
      'x-content-type-options': 'nosniff',
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'no-store',
    });
    expect(body).toContain('<a href="/bakes/slab.quern">Oat slab</a>');
    expect(body).toContain('<a href="/bakes/Cr%C3%A8me%20%26%20%3Cb%3E.quern">Crème &amp; &lt;b&gt;slab&lt;/b&gt;</a>');
    expect(body).not.toMatch(/Outside|secret|style="|<b>slab/);
  });

  test('each view at its own address, in the same frame', async () => {
    const views = await Promise.all(
      ['recipe', 'formula', 'made-of', 'day', 'label', 'trials'].map((view) => ask(`/bakes/slab.quern?view=${view}`)),
    );
    const ids = views.map(({ body }) => /<section id="([^"]*)" data-key/.exec(body)?.[1]);
    expect(ids).toEqual(['recipe', 'formula', 'made-of', 'day', 'label', 'trials']);
    for (const { status, body } of views) {
      const errors: string[] = [];
      parse(body, { onParseError: ({ code }) => errors.push(code) });
      expect([status, errors]).toEqual([200, []]);
      // What is only read has nothing that writes, and no script but the server's own.
      expect(body).not.toMatch(/data-do=|style="/);
      expect(body.match(/<script[^>]*>/g)).toEqual(['<script src="/-/page.js" defer>']);
      for (const view of ['formula', 'day']) expect(body).toContain(`href="?view=${view}"`);
    }
  });

  test('the day from another hour', async () => {
    expect((await ask('/bakes/slab.quern?view=day&serve=12:00')).body).toContain('name="serve" value="12:00"');
    expect((await ask('/bakes/slab.quern?view=day&serve=<script>')).body).toContain('name="serve" value="19:30"');
  });

  test('the sheet, the script, and a name with signs of its own', async () => {
    const [sheet, script, named] = await Promise.all([
      ask('/-/page.css'),
      ask('/-/page.js'),
      ask('/bakes/Cr%C3%A8me%20%26%20%3Cb%3E.quern'),
    ]);
    expect(sheet.headers['content-type']).toBe('text/css; charset=utf-8');
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(script.body).toContain('wakeLock');
    expect(named.body).toContain('<h1>Crème &amp; &lt;b&gt;slab&lt;/b&gt;</h1>');
  });

  test('a picture that a recipe names, and no other file', async () => {
    const picture = await ask('/bakes/pictures/slab.png');
    expect([picture.status, picture.headers['content-type'], picture.headers['content-security-policy']]).toEqual([
      200,
      'image/png',
      "default-src 'none'; style-src 'unsafe-inline'; sandbox",
    ]);
    expect((await ask('/bakes/pictures/other.png')).status).toBe(404);
    // It is named, and leads out of the folder.
    expect((await ask('/bakes/pictures/linked.png')).status).toBe(404);
  });

  test('HEAD says as much without the page', async () => {
    const { status, headers, body } = await ask('/', { method: 'HEAD' });
    expect([status, body, Number(headers['content-length']) > 1000]).toEqual([200, '', true]);
  });
});

describe('the kitchen', () => {
  test('one step at a time, with what it takes, and where to go from there', async () => {
    const first = (await ask('/bakes/slab.quern?kitchen=1&serve=16:00')).body;
    expect(first).toContain('<body class="kitchen">');
    expect(first).toContain('Step 1 of 3');
    expect(first).toContain('on the table 16:00');
    expect(first).toMatch(/<li><b>50 g<\/b> <span>butter/);
    expect(first).toMatch(/<li><b>200 g<\/b> <span>rolled oats/);
    expect(first).toContain('<a rel="next" href="?kitchen=2&amp;serve=16%3A00">');
    const second = (await ask('/bakes/slab.quern?kitchen=2')).body;
    expect(second).toMatch(/<dt>oven<\/dt><dd>180(?:&nbsp;| )°C<\/dd>/);
    expect(second).toMatch(/<dt>written<\/dt><dd>20 min<\/dd>/);
    const third = (await ask('/bakes/slab.quern?kitchen=3')).body;
    // 80 g less the 50 g of the first step.
    expect(third).toMatch(/<li><b>30 g<\/b> <span>butter<small>the rest of 80 g/);
  });

  test('all steps where no such step is', async () => {
    for (const step of ['all', '0', '4', '-1', '1.5', 'x']) {
      const { status, body } = await ask(`/bakes/slab.quern?kitchen=${step}`);
      expect([status, body.includes('3 steps')], step).toEqual([200, true]);
    }
  });
});

describe('what is refused', () => {
  test.each([
    '/../outside.quern',
    '/bakes/../../outside.quern',
    '/..%2foutside.quern',
    '/%2e%2e/outside.quern',
    '/bakes/..%5c..%5coutside.quern',
    '//etc/passwd',
    '/%2fetc%2fpasswd',
    '/secret.txt',
    '/quern.json',
    '/bakes/slab.quern%00.png',
    '/bakes/slab.quern/',
    '/bakes',
    '/-/../secret.txt',
    '/bakes/pictures/..%2f..%2fsecret.txt',
  ])('%s leads nowhere', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body).not.toMatch(/secret$|Outside|root:/);
  });

  test('an address that cannot be read', async () => {
    expect((await ask('/%zz')).status).toBe(400);
    expect((await ask(`http://127.0.0.1:${port}/`)).status).toBe(400);
  });

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])('%s', async (method) => {
    const { status, headers } = await ask('/', { method });
    expect([status, headers.allow]).toEqual([405, 'GET, HEAD']);
  });

  test.each([
    'evil.example',
    'evil.example:PORT',
    '127.0.0.1.evil.example:PORT',
    '127.0.0.1',
    '0.0.0.0:PORT',
    'localhost:1',
  ])('a name that is not its own: %s', async (name) => {
    const { status, body } = await ask('/', { headers: { Host: name.replace('PORT', String(port)) } });
    expect([status, body.includes('slab')]).toEqual([421, false]);
  });

  test('localhost is its own', async () => {
    expect((await ask('/', { headers: { Host: `LOCALHOST:${port}` } })).status).toBe(200);
  });

  test('half a request, and one that is none, end nothing', async () => {
    for (const bytes of ['GET', '\0\0\0\r\n\r\n', `GET / HTTP/1.1\r\nHost: ${'x'.repeat(99_999)}\r\n\r\n`]) {
      const socket = connect(port, '127.0.0.1');
      socket.on('error', () => undefined);
      await once(socket, 'connect');
      socket.write(bytes);
      setTimeout(() => socket.destroy(), 50);
      await new Promise((closed) => socket.on('close', closed));
    }
    expect((await ask('/')).status).toBe(200);
  });
});

test('a recipe that is changed, comes or goes while it is served', async () => {
  const before = (await ask('/-/stamp')).body;
  expect((await ask('/bakes/slab.quern')).body).toContain(`<meta name="stamp" content="${before}" data-at="/-/stamp">`);
  expect((await ask('/-/stamp')).body).toBe(before);
  writeFileSync(join(kitchen, 'bakes', 'slab.quern'), SLAB.replace('Oat slab', 'Rye slab'));
  const after = (await ask('/-/stamp')).body;
  expect(after).not.toBe(before);
  expect((await ask('/bakes/slab.quern')).body).toContain('<h1>Rye slab</h1>');
  writeFileSync(join(kitchen, 'new.quern'), SLAB.replace('Oat slab', 'New slab'));
  expect((await ask('/')).body).toContain('>New slab</a>');
  rmSync(join(kitchen, 'new.quern'));
  expect((await ask('/new.quern')).status).toBe(404);
});

test('the list is there at once, and has what each recipe comes to soon after', async () => {
  writeFileSync(join(kitchen, 'late.quern'), SLAB.replace('Oat slab', 'Late slab').replace('8 bars', '11 bars'));
  const stamp = async () => (await ask('/-/stamp?list')).body;
  const first = (await ask('/')).body;
  expect(first).toContain('>Late slab</a>');
  await expect
    .poll(async () => (await ask('/')).body, { timeout: 20_000 })
    .toMatch(/Late slab<\/a><\/th><td class="makes">11 bars<\/td><td class="cooked"><svg class="mark never"/);
  // Once all is worked out, nothing changes by itself.
  let last = '';
  await expect
    .poll(async () => {
      const before = last;
      last = await stamp();
      return last === before;
    })
    .toBe(true);
});

test('a port that is taken is said, and it ends with Ctrl+C', async () => {
  const second = spawn(NODE, [`${ROOT}dist/cli.js`, 'serve', kitchen, '--port', String(port)]);
  let err = '';
  second.stderr.on('data', (chunk) => {
    err += chunk;
  });
  const [exit] = await once(second, 'close');
  expect([exit, err]).toEqual([
    2,
    `quern serve: port ${port} is taken: give another with --port, or none to have one chosen\n`,
  ]);
  const idle = connect(port, '127.0.0.1');
  idle.on('error', () => undefined);
  await once(idle, 'connect');
  serving.kill('SIGINT');
  const [code] = await once(serving, 'close');
  expect(code).toBe(0);
});
