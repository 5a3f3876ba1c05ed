import { readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/**
 * One file of tests with all of the project that it imports, as the body of an async function of `load`, which gives
 * packages by their name. What is mutated comes from `instrumented`, by path within the project.
 */
export async function bundle(test: string, instrumented: ReadonlyMap<string, string>): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [test],
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    logLevel: 'error',
    jsx: 'automatic',
    plugins: [
      {
        name: 'mutated',
        setup(building) {
          building.onLoad({ filter: /\.tsx?$/ }, ({ path }) => {
            const text = instrumented.get(relative(process.cwd(), path)) ?? readFileSync(path, 'utf8');
            const contents = text
              .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href))
              .replaceAll('import.meta.dirname', JSON.stringify(resolve(path, '..')));
            return { contents, loader: path.endsWith('x') ? 'tsx' : 'ts' };
          });
        },
      },
    ],
  });
  const text = outputFiles[0]?.text ?? '';
  return text
    .replaceAll(
      /^import\s+(?:([\w$]+)\s*,?\s*)?(?:\{([^}]*)\}|\*\s+as\s+([\w$]+))?\s*(?:from\s*)?"([^"]+)";$/gm,
      (_, whole?: string, named?: string, all?: string, from?: string) => {
        const parts = [
          ...(whole ? [`default: ${whole}`] : []),
          ...(named ? [named.replaceAll(' as ', ': ')] : []),
        ];
        const given = `await load(${JSON.stringify(from)})`;
        if (all) return `const ${all} = ${given};`;
        return parts.length > 0 ? `const {${parts.join(', ')}} = ${given};` : `${given};`;
      },
    )
    .replaceAll(/^export \{[^}]*\};$/gm, '');
}
