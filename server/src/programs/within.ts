/**
 * Knows the folder that a program was let into: what it names must lie there.
 * Refuses to be led out by links or by names that climb.
 */
import { type Io, UsageError } from '../cli/io.ts';

/** The path as it is asked for below the folder where the program was started; refused in words where it lies elsewhere. */
export function within(io: Pick<Io, 'cwd' | 'resolve' | 'kind' | 'files'>, path: string): string {
  const real = (each: string): string => io.files.real?.(each) ?? each;
  const [folder, wanted] = [real(io.cwd), real(io.resolve(path))];
  const isBelow =
    wanted === folder ||
    wanted.startsWith(folder.endsWith('/') ? folder : `${folder}/`) ||
    wanted.startsWith(`${folder}\\`);
  if (!isBelow) throw new UsageError(`\`${path}\` lies outside the folder that was opened`);
  if (io.kind(wanted) === 'file' && !wanted.endsWith('.quern'))
    throw new UsageError(`\`${path}\` is no recipe: a recipe's name ends in .quern`);
  return path;
}
