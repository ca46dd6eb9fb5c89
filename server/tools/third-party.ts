/**
 * Writes what of others stands in the bundles: their licences, as these ask for, and a list for machines (a bill of materials in the form of
 * CycloneDX 1.6).
 */
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** A package of which something stands in a bundle. */
interface Package {
  readonly name: string;
  readonly version: string;
  /** As SPDX has it. */
  readonly license: string;
  readonly text: string;
}

const NOTICES = 'NOTICES.txt';
const MATERIALS = 'sbom.cdx.json';

/** Throws where a package does not say its licence: nothing of it may be handed on then. */
export async function writeThirdParty(
  root: string,
  inputs: readonly string[],
  own: { readonly name: string; readonly version: string; readonly license: string },
): Promise<void> {
  const folders = [...new Set(inputs.flatMap((input) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0] ?? []))];
  const packages = (await Promise.all(folders.map((folder) => packageIn(join(root, folder))))).sort((a, b) =>
    a.name < b.name ? -1 : 1,
  );
  await writeFile(`${root}dist/${NOTICES}`, notices(packages));
  await writeFile(`${root}dist/${MATERIALS}`, `${JSON.stringify(materials(own, packages))}\n`);
}

async function packageIn(folder: string): Promise<Package> {
  const { name, version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as Package;
  const file = (await readdir(folder)).find((entry) => /^licen[cs]e/i.test(entry));
  if (typeof license !== 'string' || file === undefined) throw new Error(`${folder} does not say its licence`);
  return { name, version, license, text: (await readFile(join(folder, file), 'utf8')).replace(/\r\n/g, '\n').trim() };
}

/** Each licence once, below all that have its words. */
function notices(packages: readonly Package[]): string {
  const each = [...new Set(packages.map(({ text }) => text))].map((text) => {
    const of = packages.filter((one) => one.text === text);
    return `${of.map(({ name, version, license }) => `${name} ${version} (${license})`).join('\n')}\n\n${text}\n`;
  });
  return `Quern holds parts of these packages.\n\n${each.join(`\n${'-'.repeat(80)}\n\n`)}`;
}

const materials = (own: { name: string; version: string; license: string }, packages: readonly Package[]) => ({
  bomFormat: 'CycloneDX',
  specVersion: '1.6',
  version: 1,
  metadata: { component: { ...component(own), type: 'application' } },
  components: packages.map(component),
});

const component = ({ name, version, license }: Omit<Package, 'text'>) => ({
  type: 'library',
  'bom-ref': `pkg:npm/${name.replace('@', '%40')}@${version}`,
  name,
  version,
  purl: `pkg:npm/${name.replace('@', '%40')}@${version}`,
  licenses: [/[ ()]/.test(license) ? { expression: license } : { license: { id: license } }],
});
