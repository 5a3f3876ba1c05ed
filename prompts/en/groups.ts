/** What several steps are called when they are asked together. */
export const groups = {
  fuelFilters: { title: 'Fuel filters' },
  primer: { title: 'Primer firm and screwed home' },
  hosesBootsBelts: { title: 'Hoses, boots and belts' },
  oilFeeds: { title: 'Oil to galleries and turbo' },
  wiringFasteners: { title: 'Wiring and fasteners' },
} as const satisfies Record<string, { title: string }>;

/** What a step asks for, in a few words beside the others of its group. */
export const items = {
  'fill.firstFilterPreFilled': 'first fuel filter filled, seal oiled, fitted',
  'fill.firstFilterDry': 'first fuel filter dry, seal oiled, fitted',
  'fill.secondFilterPreFilled': 'second fuel filter filled, seal oiled, fitted',
  'fill.secondFilterDry': 'second fuel filter dry, seal oiled, fitted',
  'prime.firm': 'primer firm',
  'prime.screwedHome': 'primer screwed home',
  'walkRound.hoses': 'hoses over the bead, clamps behind it and tight',
  'walkRound.boots': 'boots seated and tight',
  'walkRound.belts': 'belts in their grooves and tensioned',
  'walkRound.wiring': 'wiring clear of heat and of what moves',
  'walkRound.fasteners': 'fasteners tight and marked',
  'barOver.prelube': 'oil pumped in at the port until pressure shows',
  'barOver.turboFeed': 'turbo feed oiled and its wheel turned by hand',
} as const satisfies Record<string, string>;
