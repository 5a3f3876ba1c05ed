/** One of a few, as a row of large controls. */
export function Choose<T extends string>({
  legend,
  options,
  value,
  onChange,
}: {
  readonly legend: string;
  readonly options: Readonly<Record<T, string>>;
  readonly value: T;
  readonly onChange: (value: T) => void;
}) {
  const entries = Object.entries<string>(options).filter(
    (entry): entry is [T, string] => entry[0] in options,
  );
  return (
    <fieldset className="choose">
      <legend>{legend}</legend>
      {entries.map(([key, text]) => (
        <label key={key} className={key === value ? 'chosen' : ''}>
          <input type="radio" name={legend} checked={key === value} onChange={() => onChange(key)} />
          {text}
        </label>
      ))}
    </fieldset>
  );
}
