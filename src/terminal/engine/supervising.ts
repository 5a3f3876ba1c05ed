import { type Command, Option } from 'commander';
import { acceptableNames, accepting } from '../../profile/accepting.ts';
import { loadProfile } from '../../profile/load.ts';
import { acceptables, acceptedByName, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import {
  addSignature,
  readPrivateKey,
  type SigningRole,
  signHash,
  signingRoles,
} from '../../record/index.ts';
import { OptionError } from '../run/options.ts';
import { readText } from '../signing-commands.ts';
import { profileHash, writeProfile } from './profile-file.ts';

/** Adds `accept`: the supervisor takes what is only assumed upon themselves. */
export function registerAccept(engine: Command): void {
  engine
    .command('accept')
    .description(
      'the supervisor accepts, by name (--by), what of the starter, coolant, heater and idle is only assumed',
    )
    .argument('<file>')
    .requiredOption('--by <name>', 'name of the supervisor')
    .addOption(
      new Option('--only <what...>', 'starter limit, coolant, heater, idle').choices([...acceptables]),
    )
    .action(async (file: string, { by, only }: { by: string; only?: readonly string[] }) => {
      if (by.trim() === '') throw new OptionError('--by wants the name of the supervisor.');
      const profile = await loadProfile(file);
      const open = unfitFor(profile).flatMap(unfit => (unfit.kind === 'notAccepted' ? [unfit.what] : []));
      const wanted = open.filter(what => only === undefined || only.includes(what));
      let accepted: Profile = profile;
      for (const what of wanted) accepted = accepting(accepted, what, by.trim());
      if (wanted.length === 0) {
        console.log('There is nothing to accept.');
        return;
      }
      await writeProfile(file, { ...accepted, version: profile.version + 1 });
      for (const what of wanted)
        console.log(
          `${by.trim()} accepts ${acceptableNames[what]} as assumed: ${acceptedByName[what].join(', ')}.`,
        );
    });
}

/** Adds `sign`: a profile as it is, by somebody's key. */
export function registerSign(engine: Command): void {
  engine
    .command('sign')
    .description('sign a profile as it is; any change of it later shows')
    .argument('<file>')
    .requiredOption('--key <file>', 'the private key, signing-key.pem')
    .addOption(new Option('--role <role>', 'whose key it is').choices(signingRoles).default('supervisor'))
    .action(async (file: string, { key, role }: { key: string; role: SigningRole }) => {
      const profile = await loadProfile(file);
      const signature = signHash(
        profileHash(profile),
        readPrivateKey(await readText(key), key),
        role,
        new Date(),
      );
      const path = await addSignature(file, signature);
      console.log(
        `Signed version ${profile.version} with the key ${signature.keyId} of the ${role}: ${path}.`,
      );
    });
}
