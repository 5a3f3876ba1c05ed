import { type FormEvent, useState } from 'react';
import { buildProfile } from '../../interview/build.ts';
import {
  type Answer,
  type Answers,
  answerTyped,
  type Next,
  nextQuestion,
  progressOf,
  unitsOf,
  withAnswer,
  withoutAnswer,
} from '../../interview/interview.ts';
import type { QuestionId } from '../../interview/question.ts';
import { questionOf } from '../../interview/questions/index.ts';
import { askedUnit, showValue } from '../../interview/typed.ts';
import { originText, questionWords, understood } from '../../interview/words.ts';
import { assumedFields } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import { saveFile } from '../device/save-file.ts';
import { keepInterview, keptInterview } from '../local/made-engines.ts';
import { inOwnWords, ownLanguage, words } from '../words/index.ts';
import { Accept } from './parts/accept.tsx';

const answersOf = ({ question }: Next): readonly (readonly [text: string, shown: string])[] => {
  if (question.kind === 'yesNo') return ['yes', 'no'].map(id => [id, inOwnWords(id)] as const);
  return questionWords(question, ownLanguage()).choices;
};

/** A new engine by its data plate and its manual, a question at a time; what is answered is kept on this device. */
export function NewEngine({
  onMade,
  onLeave,
}: {
  readonly onMade: (profile: Profile) => void;
  readonly onLeave: () => void;
}) {
  const [answers, setAnswers] = useState<Answers>(keptInterview);
  const [asked, setAsked] = useState<readonly QuestionId[]>([]);
  /** Touched once: what took a quarter of an hour is not thrown away by one touch. */
  const [sure, setSure] = useState(false);
  /** What was taken back: it is put forward where it is asked again. */
  const [before, setBefore] = useState<Answers>({});
  const found = nextQuestion(answers, false, ownLanguage());
  const next = found && { ...found, proposal: before[found.question.id] ?? found.proposal };
  const go = (changed: Answers, order: readonly QuestionId[]) => {
    keepInterview(changed);
    setAnswers(changed);
    setAsked(order);
    setSure(false);
  };
  const last = asked.at(-1);
  const told = last === undefined ? undefined : answers[last];
  const goBack = (to: QuestionId) => {
    setBefore({ ...before, [to]: answers[to] });
    go(withoutAnswer(answers, to), asked.slice(0, -1));
  };
  return (
    <main className="start" aria-label={words.newEngine.title}>
      <h1>{words.newEngine.title}</h1>
      {last !== undefined && told && (
        <p className="quiet">
          {questionWords(questionOf(last), ownLanguage()).ask}:{' '}
          {understood(told, questionOf(last), unitsOf(answers), ownLanguage())}
        </p>
      )}
      {next ? (
        <Ask
          key={next.question.id}
          next={next}
          answers={answers}
          onAnswer={answer => go(withAnswer(answers, next.question.id, answer), [...asked, next.question.id])}
        />
      ) : (
        <Made answers={answers} onMade={onMade} />
      )}
      <div className="big">
        {last !== undefined && (
          <button type="button" className="choice" onClick={() => goBack(last)}>
            {words.newEngine.back}
          </button>
        )}
        <button type="button" className="choice" onClick={onLeave}>
          {words.newEngine.leave}
        </button>
        {Object.keys(answers).length > 0 && (
          <button type="button" className="choice" onClick={() => (sure ? go({}, []) : setSure(true))}>
            {sure ? words.newEngine.anewSure : words.newEngine.anew}
          </button>
        )}
      </div>
    </main>
  );
}

/** One question: what, why, where it is found, what may be chosen, and what is put forward. */
function Ask({
  next,
  answers,
  onAnswer,
}: {
  readonly next: Next;
  readonly answers: Answers;
  readonly onAnswer: (answer: Answer) => void;
}) {
  const { question, proposal, fault } = next;
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const units = unitsOf(answers);
  const unit = askedUnit(question, units);
  const { ask, why, where } = questionWords(question, ownLanguage());
  const { done, all } = progressOf(answers);
  const give = (typed: string) => {
    const read = answerTyped(typed, question, answers, proposal, ownLanguage());
    if (read.ok) onAnswer({ value: read.value, origin: read.origin });
    else setWrong(read.sentence);
  };
  const send = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() === '') setWrong(words.newEngine.nothing);
    else give(text);
  };
  const choices = answersOf(next);
  return (
    <section aria-labelledby="asked">
      <h2 id="asked">
        {done + 1}/{all} {ask}
        {unit !== '' && `, ${inOwnWords(`in ${unit}`)}`}
      </h2>
      <p>{inOwnWords(`Why: ${why}. Where: ${where}.`)}</p>
      <div role="alert">{(wrong ?? fault) && <p className="wrong">{wrong ?? fault}</p>}</div>
      <div className="big">
        {choices.map(([id, shown]) => (
          <button key={id} type="button" className="choice" onClick={() => give(id)}>
            {shown}
          </button>
        ))}
      </div>
      {choices.length === 0 && (
        <form className="card" onSubmit={send}>
          <label>
            {words.newEngine.answer}
            <input
              value={text}
              maxLength={400}
              autoComplete="off"
              onChange={event => setText(event.target.value)}
            />
          </label>
          <button type="submit" className="choice first">
            {words.newEngine.next}
          </button>
        </form>
      )}
      {proposal && (
        <div className="big">
          <button type="button" className="choice" onClick={() => onAnswer(proposal)}>
            {words.newEngine.take}: {showValue(proposal.value, question, units, ownLanguage())},{' '}
            {originText(proposal.origin, ownLanguage())}
          </button>
        </div>
      )}
    </section>
  );
}

/** What came of it: what is assumed, what the supervisor may accept by name, and the engine itself. */
function Made({
  answers,
  onMade,
}: {
  readonly answers: Answers;
  readonly onMade: (profile: Profile) => void;
}) {
  const [profile, setProfile] = useState(() => buildProfile(answers));
  return (
    <section aria-labelledby="made">
      <h2 id="made">{profile.name}</h2>
      <p>{words.newEngine.assumed(assumedFields(profile).length)}</p>
      <Accept profile={profile} onAccept={setProfile} />
      <div className="big">
        <button type="button" className="choice first" onClick={() => onMade(profile)}>
          {words.newEngine.use}
        </button>
        <button
          type="button"
          className="choice"
          onClick={() =>
            saveFile(
              new Blob([`${JSON.stringify(profile, null, 2)}\n`], { type: 'application/json' }),
              'engine.json',
            )
          }
        >
          {words.start.save}
        </button>
      </div>
    </section>
  );
}
