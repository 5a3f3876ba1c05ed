import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { systemCause, systemCode } from '../files/cause.ts';
import {
  addSignature,
  makeKeys,
  readLog,
  readPrivateKey,
  SigningError,
  type SigningRole,
  signHash,
  signingRoles,
} from '../record/index.ts';
import { ofKind, readRecorded } from '../record/vocabulary/index.ts';

/** Adds `keys make FOLDER` and `sign LOG` to the command line. */
export function registerSigning(program: Command): void {
  program
    .command('keys')
    .description('keys for signing records')
    .command('make')
    .description(
      'make a key pair (Ed25519): the private one stays with its owner, the public one goes to whoever verifies',
    )
    .argument('<folder>', 'where the two files go; it is made when it is not there')
    .action((folder: string) => told(() => makeKeyFiles(folder)));

  program
    .command('sign')
    .description('sign a closed record; the signature goes to LOG.sig.json')
    .argument('<log>', 'the record')
    .requiredOption('--key <file>', 'the private key, signing-key.pem')
    .addOption(new Option('--role <role>', 'whose key it is; it has to be said').choices(signingRoles))
    .action((log: string, { key, role }: { key: string; role?: SigningRole }) =>
      told(() => signFile(log, key, role)),
    );
}

/** A SigningError is a sentence for the user; anything else is for who called. */
async function told(work: () => Promise<string>): Promise<void> {
  try {
    console.log(await work());
  } catch (error) {
    if (!(error instanceof SigningError)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

async function makeKeyFiles(folder: string): Promise<string> {
  const { privatePem, publicPem, keyId } = makeKeys();
  const [privatePath, publicPath] = [join(folder, 'signing-key.pem'), join(folder, 'public-key.pem')];
  try {
    await mkdir(folder, { recursive: true });
    // Never over a key that is there: what was signed with it could no longer be signed again.
    await writeFile(privatePath, privatePem, { mode: 0o600, flag: 'wx' });
    await chmod(privatePath, 0o600);
    await writeFile(publicPath, publicPem, { flag: 'wx' });
  } catch (error) {
    const why = systemCode(error) === 'EEXIST' ? 'there is a key already' : systemCause(error);
    throw new SigningError(`No keys were made in ${folder}: ${why}; choose another folder.`);
  }
  return `Made the key ${keyId}: keep ${privatePath} to yourself, give ${publicPath} to whoever verifies.`;
}

/** The signature says whose it is for good: that is never guessed. */
async function signFile(log: string, keyPath: string, role: SigningRole | undefined): Promise<string> {
  if (role === undefined)
    throw new SigningError(
      `${log} is not signed: say whose key it is, --role supervisor for the supervisor's own or --role bay for the machine's.`,
    );
  const key = readPrivateKey(await readText(keyPath), keyPath);
  const { entries, fault } = await readLog(log);
  const last = entries.at(-1);
  if (fault || !last)
    throw new SigningError(`${log} is not signed: ${fault?.sentence ?? 'it holds no whole entry.'}`);
  // The last words of a session come after its end.
  if (!readRecorded(entries).entries.some(ofKind('closed')))
    throw new SigningError(`${log} is not signed: its session is not closed yet; go on with it, or end it.`);
  const signature = signHash(last.hash, key, role, new Date());
  const path = await addSignature(log, signature);
  return `Signed with the key ${signature.keyId} of the ${role}: ${path}.`;
}

/** @throws SigningError when the file cannot be read */
export async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    throw new SigningError(
      `The key ${path} cannot be read: ${systemCause(error)}; give the path of a PEM file.`,
    );
  }
}
