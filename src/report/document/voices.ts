import { fill } from '../../session/wording.ts';
import { time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { ReportModel, SpokenStory } from '../model.ts';
import { capital } from '../names.ts';
import type { Block } from './blocks.ts';
import { cells, longTable } from './tables.ts';

const people = ['technician', 'second'] as const;

/** Who said what at a microphone that two people share; absent where voices were not told apart. */
export function voicesSection({ voices }: ReportModel, manner: Manner): Block[] {
  if (voices === null) return [];
  const { name } = manner;
  const { voices: words } = manner.words;
  const refused = voices.spoken.filter(each => each.refused).length;
  return [
    { type: 'section', title: words.title, note: words.note },
    {
      type: 'table',
      columns: [
        { title: words.person, width: 0.28 },
        ...[words.answers, words.own, words.others, words.unsure].map(title => ({
          title,
          width: 0.18,
          align: 'right' as const,
        })),
      ],
      rows: people.map(person => {
        const theirs = voices.spoken.filter(({ by }) => by === person);
        const count = (is: (each: SpokenStory) => boolean) => String(theirs.filter(is).length);
        return cells(
          capital(name.person(person)),
          String(theirs.length),
          count(({ voice }) => voice === person),
          count(({ voice }) => voice !== undefined && voice !== person),
          count(({ voice }) => voice === undefined),
        );
      }),
    },
    ...(refused === 0
      ? []
      : [{ type: 'text', tone: 'warn', text: manner.counted(refused, words.refused) } as const]),
    {
      type: 'folded',
      summary: manner.counted(voices.spoken.length, words.folded),
      blocks: spokenTable(voices.spoken, manner),
    },
  ];
}

function spokenTable(spoken: readonly SpokenStory[], manner: Manner): Block[] {
  const { name } = manner;
  const { tables, quoted, voices: words } = manner.words;
  const voiceOf = ({ voice, refused }: SpokenStory) => {
    const whose =
      voice === undefined ? words.notSure : voice === 'neither' ? words.neither : name.person(voice);
    return refused
      ? { text: fill(words.notTaken, { voice: whose }), tone: 'warn' as const, strong: true }
      : { text: whose };
  };
  return longTable(
    [
      { title: tables.at, width: 0.1, align: 'right' },
      { title: tables.step, width: 0.26 },
      { title: words.said, width: 0.24 },
      { title: words.askedOf, width: 0.18 },
      { title: words.voice, width: 0.22 },
    ],
    spoken.map(each =>
      cells(
        time(each.timeMs),
        name.step(each.step),
        fill(quoted, { text: each.text }),
        name.person(each.by),
        voiceOf(each),
      ),
    ),
    manner,
  );
}
