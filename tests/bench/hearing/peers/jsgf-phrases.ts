/** Every phrase of a rule of a JSGF grammar without loops, and how often each was derived. */
export function phrasesOfJsgf(jsgf: string, rule: string): ReadonlyMap<string, number> {
  const definitions = new Map(
    [...jsgf.matchAll(/^(?:public )?<(\w+)> = (.*);$/gm)].map(([, name = '', text = '']) => [name, text]),
  );

  function read(name: string): readonly string[] {
    const definition = definitions.get(name);
    if (definition === undefined) throw new Error(`<${name}> is used but not defined`);
    const tokens = definition.match(/[()[\]|]|[^\s()[\]|]+/g) ?? [];
    let at = 0;

    function choice(): readonly string[] {
      const phrases = [...sequence()];
      while (tokens[at] === '|') {
        at++;
        phrases.push(...sequence());
      }
      return phrases;
    }

    function sequence(): readonly string[] {
      const places: (readonly string[])[] = [];
      for (let token = tokens[at]; token !== undefined && !/[)\]|]/.test(token); token = tokens[at]) {
        at++;
        places.push(place(token));
      }
      if (places.length === 0) throw new Error(`an alternative of <${name}> is empty`);
      return places.reduce((starts, ends) =>
        starts.flatMap(start => ends.map(end => `${start} ${end}`.trim())),
      );
    }

    function place(token: string): readonly string[] {
      if (token.startsWith('<')) return read(token.slice(1, -1));
      if (token !== '(' && token !== '[') return [token];
      const inside = choice();
      if (tokens[at++] !== (token === '(' ? ')' : ']')) throw new Error(`<${name}> has a bracket left open`);
      return token === '(' ? inside : ['', ...inside];
    }

    const phrases = choice();
    if (at !== tokens.length)
      throw new Error(`<${name}> goes on after its end: ${tokens.slice(at).join(' ')}`);
    return phrases;
  }

  const derived = new Map<string, number>();
  for (const phrase of read(rule)) derived.set(phrase, (derived.get(phrase) ?? 0) + 1);
  return derived;
}
