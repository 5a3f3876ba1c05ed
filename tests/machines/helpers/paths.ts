import { procedureFor } from '../../../machines/first-start.ts';
import { stateName } from '../../../machines/moment.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import type { Edge, Graph, Place } from './explore.ts';
import { type Effect, effectOf, holdsAfter, unmetNeeds } from './oracle.ts';

export const stepIds = (profile: Profile): string[] => procedureFor(profile).map(step => step.id);

function groupBy<Item>(items: readonly Item[], key: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group) group.push(item);
    else groups.set(key(item), [item]);
  }
  return groups;
}

interface WithEffect extends Edge {
  readonly effect: Effect;
}

/**
 * What holds at each node on every path that leads there: facts are carried along all edges and only those
 * that every way brings are kept, until nothing changes any more.
 */
function holdsOnEveryPath(graph: Graph, all: readonly WithEffect[]): Map<string, ReadonlySet<string>> {
  const outOf = groupBy(all, edge => edge.from);
  const holds = new Map<string, ReadonlySet<string>>([[graph.start, new Set<string>()]]);
  const waiting = [graph.start];
  for (let from = waiting.pop(); from !== undefined; from = waiting.pop()) {
    const held = holds.get(from) ?? new Set<string>();
    for (const { to, effect } of outOf.get(from) ?? []) {
      const brought = holdsAfter(held, effect);
      const known = holds.get(to);
      const kept = known ? new Set([...known].filter(fact => brought.has(fact))) : brought;
      if (known && kept.size === known.size) continue;
      holds.set(to, kept);
      waiting.push(to);
    }
  }
  return holds;
}

/** Every event on any path that led past a need that was not met, as a sentence. */
export function breaches(graph: Graph, profile: Profile): string[] {
  const ids = stepIds(profile);
  const all = graph.edges.map(edge => ({ ...edge, effect: effectOf(edge.happened, ids, profile) }));
  const holds = holdsOnEveryPath(graph, all);
  return all.flatMap(({ from, happened, effect }) => {
    const unmet = unmetNeeds(holds.get(from) ?? new Set(), effect);
    const way = `${stateName(happened.before)} -> ${stateName(happened.after)}`;
    return unmet.length > 0 ? [`${way} by ${happened.event.type} without ${unmet.join(', ')}`] : [];
  });
}

/** The names of the states from which no way leads to an end, or to where the bound on stops cuts the path off. */
export function deadEnds(graph: Graph, isEnd: (place: Place) => boolean): string[] {
  const into = groupBy(graph.edges, edge => edge.to);
  const reaches = new Set([...graph.places].flatMap(([key, place]) => (isEnd(place) ? [key] : [])));
  const waiting = [...reaches];
  for (let to = waiting.pop(); to !== undefined; to = waiting.pop()) {
    for (const { from } of into.get(to) ?? []) {
      if (reaches.has(from)) continue;
      reaches.add(from);
      waiting.push(from);
    }
  }
  return [...graph.places].flatMap(([key, place]) => (reaches.has(key) ? [] : [stateName(place.moment)]));
}

export const size = (graph: Graph) => `${graph.places.size} states, ${graph.edges.length} transitions`;
